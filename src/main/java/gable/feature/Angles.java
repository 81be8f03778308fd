package gable.feature;

/** Angles in radians, brought into one turn. */
final class Angles {

  static final double TURN = 2 * Math.PI;

  private Angles() {}

  /** The same angle within [−π, π]. */
  static double wrapped(double angle) {
    return Math.IEEEremainder(angle, TURN);
  }
}
