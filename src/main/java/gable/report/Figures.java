package gable.report;

import gable.geom.Vec3;
import gable.plan.Measure;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as people and programs read them: degrees, and no digits that mean nothing. */
final class Figures {

  /** A nanometre: far below what any coordinate in a file resolves. */
  private static final int DECIMALS = 6;

  private Figures() {}

  /** A number with at most six decimals and without trailing zeros, never in powers of ten. */
  static BigDecimal plain(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    BigDecimal bare = rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
    return bare.scale() < 0 ? bare.setScale(0) : bare;
  }

  /** A length in millimetres to two decimals. */
  static String length(double millimetres) {
    return String.format(Locale.ROOT, "%.2f mm", millimetres);
  }

  /** An angle in degrees, as short as it can be with at most one decimal. */
  static String degrees(double radians) {
    String text = String.format(Locale.ROOT, "%.1f", Math.toDegrees(radians));
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }

  /** A point in millimetres to two decimals. */
  static String point(Vec3 p) {
    return String.format(Locale.ROOT, "%.2f, %.2f, %.2f", zero(p.x()), zero(p.y()), zero(p.z()));
  }

  /** A value that would be shown as minus zero becomes zero. */
  private static double zero(double value) {
    return Math.abs(value) < 0.005 ? 0 : value;
  }

  /** Value of a measure in the unit that is shown. */
  static double shown(Measure measure) {
    return measure.quantity() == Measure.Quantity.ANGLE
        ? Math.toDegrees(measure.value())
        : measure.value();
  }

  /** Name of a measure in JSON: {@code roof-left} in millimetres is {@code roofLeftMm}. */
  static String key(Measure measure) {
    StringBuilder key = new StringBuilder();
    for (String word : measure.name().split("-", -1)) {
      key.append(key.isEmpty() ? word : Character.toUpperCase(word.charAt(0)) + word.substring(1));
    }
    return key.append(suffix(measure.quantity())).toString();
  }

  private static String suffix(Measure.Quantity quantity) {
    return switch (quantity) {
      case LENGTH -> "Mm";
      case ANGLE -> "Deg";
      case VOLUME -> "Mm3";
    };
  }

  /** Name of a constant as programs read it: {@code OPEN_SQUARE} is {@code open-square}. */
  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
