package gable.feature;

/** How a pin meets the body that carries it. */
public enum RootKind {
  /** On a flat face square to the axis. */
  SQUARE,
  /** On a flat face that is not square to the axis. */
  SLANTED,
  /** On a curved face, or on several. */
  CURVED,
  /** On a rounding that widens towards the body. */
  FILLETED,
  /** On a cone that widens towards the body. */
  CHAMFERED;

  /** What the wall's end is when the pin's outside is read as the inside of a bore. */
  static RootKind of(EndKind mouth) {
    return switch (mouth) {
      case OPEN_SQUARE, STEP -> SQUARE;
      case OPEN_SLANTED -> SLANTED;
      case FILLETED -> FILLETED;
      case CHAMFERED, COUNTERSUNK -> CHAMFERED;
      default -> CURVED;
    };
  }
}
