package gable.plan;

import java.util.OptionalDouble;

/**
 * What the user allows, in millimetres and radians.
 *
 * @param slope least slope from the horizontal that prints without support (common practice: 45
 *     degrees; measured as overhang limit by Mazlan et al., J. Adv. Ind. Technol. Appl. 1(1), 2020)
 * @param smallestBore bores of a smaller diameter stay round (common practice: leave below 3 to 5)
 * @param largestBore bores of a larger diameter stay as they are
 * @param leastRoof least material over a roof, measured straight up (common practice: 3 lines of
 *     0.4)
 * @param longestBridge longest flat span that prints without sagging (common practice: 5)
 * @param joint sizes of what makes two halves go together
 */
public record Limits(
    double slope,
    double smallestBore,
    double largestBore,
    double leastRoof,
    double longestBridge,
    Joint joint) {

  /** Share of a line that may hang in the air (common practice, no single source: one half). */
  private static final double HANGING_SHARE = 0.5;

  /** Refuses what cannot be meant. */
  public Limits {
    require(slope > 0 && slope < Math.PI / 2, "slope limit", slope);
    require(smallestBore >= 0, "smallest bore", smallestBore);
    require(largestBore >= smallestBore, "largest bore", largestBore);
    require(leastRoof >= 0, "least roof", leastRoof);
    require(longestBridge >= 0, "longest bridge", longestBridge);
  }

  /**
   * Limits with the usual joints.
   *
   * @param slope see the record
   * @param smallestBore see the record
   * @param largestBore see the record
   * @param leastRoof see the record
   * @param longestBridge see the record
   */
  public Limits(
      double slope,
      double smallestBore,
      double largestBore,
      double leastRoof,
      double longestBridge) {
    this(slope, smallestBore, largestBore, leastRoof, longestBridge, Joint.USUAL);
  }

  /**
   * Sizes of what makes two halves go together, in millimetres.
   *
   * @param tip leg of the chamfer of a pin's tip; empty: by the pin's diameter (estimate, see the
   *     reshaper of tips)
   * @param leadIn leg of the chamfer of a bore's mouth (common practice, no source: 0.3 to 0.5)
   * @param webWidth thickness of the web that carries a pin in the air (common practice, no source:
   *     2 to 3 lines, 0.8 to 1.2)
   * @param clearance room on each side of a web in its slot (common practice, no source: 0.15 to
   *     0.25)
   * @param webs on which sides of a pin webs stand
   */
  public record Joint(
      OptionalDouble tip, double leadIn, double webWidth, double clearance, Webs webs) {

    /** On which sides of a pin webs stand. */
    public enum Webs {
      /** Below the pin, as the part lies. */
      BELOW,
      /** Below and above, so that the part can be turned over. */
      BOTH
    }

    /** Largest leg of a tip that can be meant: three times the largest in use (estimate). */
    public static final double LARGEST_TIP = 5;

    /** Largest leg of a mouth that can be meant (estimate). */
    public static final double LARGEST_LEAD_IN = 3;

    /** Thickest web that can be meant: thicker is no web but a body (estimate). */
    public static final double THICKEST_WEB = 5;

    /** Largest clearance that can be meant: above the loosest fit of printed parts (estimate). */
    public static final double LARGEST_CLEARANCE = 1;

    /** Width of a line where none is given, in millimetres (common practice). */
    private static final double USUAL_LINE = 0.4;

    /** Thinnest web in use, in millimetres (common practice). */
    private static final double THIN_WEB = 0.8;

    /** What is usual. */
    public static final Joint USUAL =
        new Joint(OptionalDouble.empty(), 0.4, webOf(USUAL_LINE), 0.2, Webs.BELOW);

    /** Refuses what cannot be meant. */
    public Joint {
      if (tip.isPresent()) {
        require(within(tip.getAsDouble(), LARGEST_TIP), "tip chamfer", tip.getAsDouble());
      }
      require(within(leadIn, LARGEST_LEAD_IN), "lead-in", leadIn);
      require(within(webWidth, THICKEST_WEB), "web width", webWidth);
      require(within(clearance, LARGEST_CLEARANCE), "clearance", clearance);
    }

    private static boolean within(double value, double largest) {
      return value > 0 && value <= largest;
    }

    /** A web of whole lines: two, or three where two are thinner than what is in use. */
    public static double webOf(double lineWidth) {
      require(lineWidth > 0, "line width", lineWidth);
      return lineWidth * (2 * lineWidth < THIN_WEB ? 3 : 2);
    }
  }

  private static void require(boolean fine, String what, double value) {
    if (!fine) {
      throw new IllegalArgumentException(what + " cannot be " + value);
    }
  }

  /** The usual limits. */
  public static Limits usual() {
    return new Limits(Math.PI / 4, 4, Double.POSITIVE_INFINITY, 1.2, 5);
  }

  /**
   * The slope that a layer height and a line width need: each layer may step out by at most half a
   * line, so tan(slope) = height / (width / 2).
   */
  public static double slopeFor(double layerHeight, double lineWidth) {
    require(layerHeight > 0, "layer height", layerHeight);
    require(lineWidth > 0, "line width", lineWidth);
    return Math.atan(layerHeight / (HANGING_SHARE * lineWidth));
  }

  /** The same limits with another slope. */
  public Limits withSlope(double radians) {
    return new Limits(radians, smallestBore, largestBore, leastRoof, longestBridge, joint);
  }

  /** The same limits with other joints. */
  public Limits withJoint(Joint other) {
    return new Limits(slope, smallestBore, largestBore, leastRoof, longestBridge, other);
  }
}
