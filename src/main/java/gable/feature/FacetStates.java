package gable.feature;

/**
 * What has become of each facet in a search: free, out of use as a seed, or a wall. A facet is out
 * of use once it was the seed or near the seed of a failed patch, or has been part of several
 * failed walls; that bounds the work on any facet.
 */
final class FacetStates {

  /** A wall that failed because it grew from a bad seed gets this many other seeds. */
  private static final byte MOST_FAILURES = 6;

  private static final byte WALL = Byte.MAX_VALUE;

  private final byte[] states;

  FacetStates(int facetCount) {
    states = new byte[facetCount];
  }

  boolean isFree(int facet) {
    return states[facet] < MOST_FAILURES;
  }

  boolean isWall(int facet) {
    return states[facet] == WALL;
  }

  /** Takes a facet out of use as a seed. */
  void tried(int facet) {
    if (isFree(facet)) {
      states[facet] = MOST_FAILURES;
    }
  }

  /** Counts a failed wall. */
  void failed(IndexSet facets) {
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      if (isFree(facet)) {
        states[facet]++;
      }
    }
  }

  /** Marks facets as a wall. */
  void wall(int[] facets) {
    for (int facet : facets) {
      states[facet] = WALL;
    }
  }
}
