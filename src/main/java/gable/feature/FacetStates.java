package gable.feature;

/**
 * What has become of each facet in a search: free, out of use as a seed, barred, or a wall. A facet
 * is out of use as a seed once it was the seed or near the seed of a failed patch, or has been part
 * of several failed walls; it is barred from all growth when walls go on to fail over it. That
 * bounds the work on any facet.
 */
final class FacetStates {

  /** A wall that failed for sure counts for this many that failed because the seed was bad. */
  static final int SURE = 2;

  /** A wall that failed because it grew from a bad seed gets this many other seeds. */
  private static final byte MOST_FAILURES = 6;

  /** Failures of walls that grow from seeds elsewhere into this facet: as many again. */
  private static final byte BARRED = 2 * MOST_FAILURES;

  private static final byte COUNT = 31;
  private static final byte TRIED = 32;
  private static final byte WALL = 64;

  private final byte[] states;

  /** Written by the search alone; whoever looks ahead reads it. */
  private volatile int epoch;

  FacetStates(int facetCount) {
    states = new byte[facetCount];
  }

  /**
   * Changes after more facets have been barred. What another thread found out about a patch still
   * holds as long as this number is the one that it had before.
   */
  int epoch() {
    return epoch;
  }

  boolean isFree(int facet) {
    return states[facet] < MOST_FAILURES;
  }

  boolean isWall(int facet) {
    return states[facet] == WALL;
  }

  /** True if no other wall may grow over a facet. */
  boolean isBarred(int facet) {
    return states[facet] == WALL || (states[facet] & COUNT) >= BARRED;
  }

  /** Takes a facet out of use as a seed. */
  void tried(int facet) {
    if (states[facet] != WALL) {
      states[facet] = (byte) (states[facet] | TRIED);
    }
  }

  /** Counts a failed wall. */
  void failed(IndexSet facets, int times) {
    boolean barred = false;
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      if (!isBarred(facet)) {
        states[facet] = (byte) (states[facet] + times);
        barred |= isBarred(facet);
      }
    }
    if (barred) {
      nextEpoch();
    }
  }

  /** Marks facets as a wall. */
  void wall(int[] facets) {
    for (int facet : facets) {
      states[facet] = WALL;
    }
    nextEpoch();
  }

  private void nextEpoch() {
    int next = epoch + 1;
    epoch = next; // one thread writes it
  }
}
