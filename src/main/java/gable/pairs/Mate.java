package gable.pairs;

import gable.geom.Vec3;

/**
 * A pin and a way into a bore, as a motion of part A onto part B must bring them together: a line
 * of A onto a line of B, with the directions in which A goes.
 *
 * @param pinOnA whether A has the pin; else it has the bore
 * @param pin the pin
 * @param way the way into the bore
 */
record Mate(boolean pinOnA, PinHalf pin, Way way) {

  /** How far what ends on a face may miss it, in millimetres: edges are broken, walls are noisy. */
  private static final double SEAT = 0.1;

  /** Direction in A in which A goes. */
  Vec3 directionOfA() {
    return pinOnA ? pin.axis().direction() : way.into().times(-1);
  }

  /** The same in B. */
  Vec3 directionOfB() {
    return pinOnA ? way.into() : pin.axis().direction().times(-1);
  }

  /** Point of the line in A that meets the point of the line in B when the faces meet. */
  Vec3 pointOfA() {
    return pinOnA ? pin.axis().origin() : way.mouth();
  }

  /** Point of the line in B. */
  Vec3 pointOfB() {
    return pinOnA ? way.mouth() : pin.axis().origin();
  }

  String siteOfA() {
    return pinOnA ? pin.id() : way.bore().ids().get(0);
  }

  String siteOfB() {
    return pinOnA ? way.bore().ids().get(0) : pin.id();
  }

  /**
   * How far A can go until the pin's tip meets the bottom, from where its root meets the mouth;
   * infinite if there is no bottom.
   */
  double spare() {
    return way.closed() ? way.bore().depth() - pin.length() : Double.POSITIVE_INFINITY;
  }

  /** Whether the pin is in far enough where its root stays {@code gap} before the mouth. */
  boolean isEngaged(double gap) {
    double in = Math.min(pin.length() - gap, way.bore().depth());
    return in >= Fit.engagement(pin) - SEAT;
  }

  /** Whether the pin can go all the way in, alone. */
  boolean isSeated() {
    return spare() >= -SEAT && isEngaged(0);
  }

  static double seat() {
    return SEAT;
  }
}
