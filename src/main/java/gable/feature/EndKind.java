package gable.feature;

/** How a bore ends. */
public enum EndKind {
  /** On a flat face square to the axis. */
  OPEN_SQUARE,
  /** On a flat face that is not square to the axis. */
  OPEN_SLANTED,
  /** On a curved face, on several faces, or in another void. */
  OPEN_CURVED,
  /** On a short cone that widens to the outside. */
  CHAMFERED,
  /** On a cone that widens to the outside by half the radius or more. */
  COUNTERSUNK,
  /** On a rounding that turns outwards. */
  FILLETED,
  /** In a larger bore on the same axis. */
  STEP,
  /** In a smaller bore on the same axis. */
  NARROWING,
  /** In a thread. */
  THREADED,
  /** On a flat bottom. */
  BLIND_FLAT,
  /** On a cone, as a drill leaves it. */
  BLIND_CONE,
  /** On a rounded bottom. */
  BLIND_ROUND;

  /** True if there is a bottom, not an opening. */
  public boolean isBlind() {
    return this == BLIND_FLAT || this == BLIND_CONE || this == BLIND_ROUND;
  }
}
