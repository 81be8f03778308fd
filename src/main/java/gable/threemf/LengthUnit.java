package gable.threemf;

import java.util.Arrays;
import java.util.Optional;

/** Units of length of a model part. Source: 3MF core specification 1.4, section 3.4. */
public enum LengthUnit {
  MICRON("micron", 0.001),
  MILLIMETER("millimeter", 1),
  CENTIMETER("centimeter", 10),
  INCH("inch", 25.4),
  FOOT("foot", 304.8),
  METER("meter", 1000);

  private final String word;
  private final double millimetres;

  LengthUnit(String word, double millimetres) {
    this.word = word;
    this.millimetres = millimetres;
  }

  /** The unit with a name as the standard spells it. */
  public static Optional<LengthUnit> of(String word) {
    return Arrays.stream(values()).filter(unit -> unit.word.equals(word)).findFirst();
  }

  /** The name as the standard spells it. */
  public String word() {
    return word;
  }

  /** Length of the unit in millimetres. */
  public double millimetres() {
    return millimetres;
  }
}
