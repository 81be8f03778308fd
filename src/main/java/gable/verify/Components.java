package gable.verify;

/**
 * Which facets that go or come hang together: along common edges, and a facet that goes with the
 * new one that takes its place at an edge.
 */
final class Components {

  private final int[] parent;

  Components(Patch patch) {
    parent = new int[patch.firstStaying()];
    for (int f = 0; f < parent.length; f++) {
      parent[f] = f;
    }
    LongTable gone = new LongTable(3 * patch.firstAdded());
    LongTable come = new LongTable(3 * (patch.firstStaying() - patch.firstAdded()));
    for (int f = 0; f < parent.length; f++) {
      for (int k = 0; k < 3; k++) {
        int from = patch.corner(f, k);
        int to = patch.corner(f, (k + 1) % 3);
        LongTable own = patch.isAdded(f) ? come : gone;
        own.putIfAbsent(LongTable.pair(from, to), f);
        join(f, own.get(LongTable.pair(to, from)));
        join(f, gone.get(LongTable.pair(from, to)));
      }
    }
  }

  private void join(int f, int g) {
    if (g != LongTable.NONE) {
      parent[find(f)] = find(g);
    }
  }

  /** The facet that stands for all that hang together with a facet. */
  int find(int facet) {
    int root = facet;
    while (parent[root] != root) {
      parent[root] = parent[parent[root]];
      root = parent[root];
    }
    return root;
  }
}
