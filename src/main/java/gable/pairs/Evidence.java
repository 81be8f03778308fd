package gable.pairs;

/** How it is known that a pin belongs to a bore. */
public enum Evidence {
  /** The pin is in the bore, as the parts are placed. */
  POSITION,
  /** Several pins and bores have the same spacing, so that one motion joins them all. */
  PATTERN,
  /** There is no other that fits. */
  SIZE
}
