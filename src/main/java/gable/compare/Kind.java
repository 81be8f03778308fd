package gable.compare;

/** What became of something between two files. */
public enum Kind {
  /** It is the same in both. */
  SAME,
  /** It is in both and differs. */
  CHANGED,
  /** It is in the second only. */
  ADDED,
  /** It is in the first only. */
  REMOVED;

  /** The kind of something that is in one or both. */
  static Kind of(boolean before, boolean after, boolean same) {
    if (before && after) {
      return same ? SAME : CHANGED;
    }
    return before ? REMOVED : ADDED;
  }
}
