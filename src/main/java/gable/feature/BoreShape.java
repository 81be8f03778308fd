package gable.feature;

/** What the wall of a bore looks like in its section. */
public enum BoreShape {
  /** Round all the way round. */
  ROUND,
  /** Round below, with a peaked, flat or rounded roof already. */
  PEAKED,
  /** A regular polygon of fewer than ten sides. */
  POLYGON,
  /** Round over more than half a turn, but not all the way: a flat, a keyway, an open channel. */
  PARTIAL,
  /** An internal thread; its radius is that of its crests. */
  THREAD
}
