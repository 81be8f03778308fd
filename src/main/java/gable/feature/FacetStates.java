package gable.feature;

/** What has become of each facet in a search: free, tried as a seed without success, or a wall. */
final class FacetStates {

  private static final byte TRIED = 1;
  private static final byte WALL = 2;

  private final byte[] states;

  FacetStates(int facetCount) {
    states = new byte[facetCount];
  }

  boolean isFree(int facet) {
    return states[facet] == 0;
  }

  boolean isWall(int facet) {
    return states[facet] == WALL;
  }

  /** Marks the first {@code count} facets of a set as tried. */
  void tried(IndexSet facets, int count) {
    for (int k = 0; k < count; k++) {
      if (states[facets.get(k)] == 0) {
        states[facets.get(k)] = TRIED;
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
