package gable.report;

import java.util.List;

/** What everybody who prints a changed part should know. The README shows the same sentences. */
public final class Cautions {

  /** For the end of every report of a change. */
  public static final String SHORT =
      "Before you print: a roof takes material from above the bore and leaves a notch at its ridge."
          + " Keep the original, look at every change, and do not use the part where a failure can"
          + " hurt somebody. All cautions: gable cautions";

  /** All of them. */
  public static final List<String> ALL =
      List.of(
          "Less material stands above a roofed bore: by r (1/cos s - 1), which is 41 % of the radius"
              + " at 45 degrees. The report shows what is left; be wary below 1.2 mm (3 lines), and"
              + " below half the diameter for a bore that carries a load.",
          "The ridge is a notch, and a sharp notch multiplies stress. Where the part is pulled"
              + " across the ridge, prefer a flat top, or leave the bore round.",
          "The round wall shrinks to 360 - 2 s degrees. A load that pushes upwards bears on two"
              + " lines and spreads the roof. Seals, bearings, press fits and threads need a full"
              + " round bore: leave those out with --skip.",
          "Layered parts are weaker across their layers, and a roof changes the load path there.",
          "Gable promises that the shape prints, not that it fits: shrinkage, compensation of hole"
              + " sizes and the spread of machines are not covered. Print a test piece.",
          "No statement is made on fitness for any purpose. Parts for lifting, pressure, vehicles,"
              + " aircraft, medicine, climbing, children, electrical or fire safety must not be used"
              + " changed without a review by a qualified engineer under the rules of the place.",
          "A change to a model of somebody else can void its certification or the terms of its"
              + " licence: keep the original and the report.",
          "Finding can be wrong: bosses, decorative rings and snap seats may look like bores. Look"
              + " at gable inspect first, and leave features out with --skip.",
          "The result holds for the way up in the file (or --up). Printed another way, a roof is"
              + " useless or harmful.");

  private Cautions() {}
}
