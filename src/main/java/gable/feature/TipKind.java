package gable.feature;

/** How a pin ends at its free end. */
public enum TipKind {
  /** On one flat face, square to the axis or slanted. */
  FLAT,
  /** On a flat face behind a cone that narrows towards it. */
  CHAMFERED,
  /** On a cone that runs to a point. */
  CONICAL,
  /** On a rounding, with or without a flat face in its middle. */
  ROUNDED,
  /** On a face with a hole in it that is not deep enough to make the pin the outside of a boss. */
  HOLLOW,
  /** On anything else, such as a slot for a blade. */
  UNEVEN
}
