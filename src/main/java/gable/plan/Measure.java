package gable.plan;

/**
 * A number about a change.
 *
 * @param name what is measured, in words with hyphens, such as {@code roof-left}
 * @param value the number, in millimetres, radians or cubic millimetres
 * @param quantity what kind of number it is
 */
public record Measure(String name, double value, Quantity quantity) {

  /** Kind of a measure. */
  public enum Quantity {
    /** Millimetres. */
    LENGTH,
    /** Radians here; degrees wherever a person reads it. */
    ANGLE,
    /** Cubic millimetres. */
    VOLUME
  }

  /** A length in millimetres. */
  public static Measure length(String name, double millimetres) {
    return new Measure(name, millimetres, Quantity.LENGTH);
  }

  /** An angle in radians. */
  public static Measure angle(String name, double radians) {
    return new Measure(name, radians, Quantity.ANGLE);
  }

  /** A volume in cubic millimetres. */
  public static Measure volume(String name, double cubicMillimetres) {
    return new Measure(name, cubicMillimetres, Quantity.VOLUME);
  }
}
