package gable.mesh;

import java.util.Arrays;

/**
 * Which half-edge lies opposite which: two half-edges are opposite if they join the same two
 * vertices, by number, in opposite directions and nobody else joins these vertices. That is the
 * rule of the 3MF core specification (1.4, section 4.1): every edge in exactly two triangles, in
 * opposite direction.
 *
 * <p>Built in linear time: half-edges are put into buckets by their smaller vertex and matched
 * within it by the larger; a crowded bucket is sorted.
 */
public final class HalfEdges {

  private final int[] opposite;
  private final int openEdges;
  private final int badEdges;

  private HalfEdges(int[] opposite, int openEdges, int badEdges) {
    this.opposite = opposite;
    this.openEdges = openEdges;
    this.badEdges = badEdges;
  }

  /** Matches the half-edges of a mesh. */
  public static HalfEdges of(Mesh mesh) {
    Matcher matcher = new Matcher(mesh, new int[3 * mesh.facetCount()]);
    Arrays.fill(matcher.opposite, -1);
    matcher.match();
    return new HalfEdges(matcher.opposite, matcher.open, matcher.bad);
  }

  /** True if the half-edges of a mesh are {@link #closed}; costs half the memory of them. */
  public static boolean close(Mesh mesh) {
    Matcher matcher = new Matcher(mesh, new int[0]);
    matcher.match();
    return matcher.open == 0 && matcher.bad == 0;
  }

  /** The opposite half-edge, or −1 where there is none or more than one. */
  public int opposite(int halfEdge) {
    return opposite[halfEdge];
  }

  /** Facet across a half-edge, or −1. */
  public int facetAcross(int halfEdge) {
    int other = opposite[halfEdge];
    return other < 0 ? -1 : other / 3;
  }

  /** Number of edges that belong to one facet only. */
  public int openEdges() {
    return openEdges;
  }

  /** Number of edges that belong to more than two facets, or to two in the same direction. */
  public int badEdges() {
    return badEdges;
  }

  /** True if every edge belongs to exactly two facets, in opposite directions. */
  public boolean closed() {
    return openEdges == 0 && badEdges == 0;
  }

  int[] copyOfOpposites() {
    return opposite.clone();
  }

  /** The short life of one matching. */
  private static final class Matcher {

    private final Mesh mesh;
    private final int[] opposite;
    private int open;
    private int bad;

    /** Fills a list of opposite half-edges, or none if that is empty. */
    Matcher(Mesh mesh, int[] opposite) {
      this.mesh = mesh;
      this.opposite = opposite;
    }

    void match() {
      int count = 3 * mesh.facetCount();
      int[] start = new int[mesh.vertexCount() + 1];
      for (int h = 0; h < count; h++) {
        start[low(h) + 1]++;
      }
      int crowd = 0;
      for (int v = 0; v < mesh.vertexCount(); v++) {
        crowd = Math.max(crowd, start[v + 1]);
        start[v + 1] += start[v];
      }
      int[] byLow = new int[count];
      int[] cursor = Arrays.copyOf(start, mesh.vertexCount());
      for (int h = 0; h < count; h++) {
        byLow[cursor[low(h)]++] = h;
      }
      long[] keys = new long[crowd];
      for (int v = 0; v < mesh.vertexCount(); v++) {
        matchBucket(byLow, start[v], start[v + 1], keys);
      }
    }

    private int low(int h) {
      return Math.min(mesh.origin(h), mesh.target(h));
    }

    private int high(int h) {
      return Math.max(mesh.origin(h), mesh.target(h));
    }

    /** Sorts one bucket by the larger vertex and matches runs of equal ones. */
    private void matchBucket(int[] byLow, int from, int to, long[] keys) {
      int count = to - from;
      for (int k = 0; k < count; k++) {
        int h = byLow[from + k];
        keys[k] = (long) high(h) << 32 | h;
      }
      Arrays.sort(keys, 0, count);
      int run = 0;
      for (int k = 1; k <= count; k++) {
        if (k == count || keys[k] >>> 32 != keys[run] >>> 32) {
          matchRun(keys, run, k);
          run = k;
        }
      }
    }

    private void matchRun(long[] keys, int from, int to) {
      int first = (int) keys[from];
      if (to - from == 1) {
        open++;
      } else if (to - from == 2 && mesh.origin(first) == mesh.target((int) keys[from + 1])) {
        int second = (int) keys[from + 1];
        if (mesh.origin(first) == mesh.target(first)) {
          bad++;
          return;
        }
        if (opposite.length > 0) {
          opposite[first] = second;
          opposite[second] = first;
        }
      } else {
        bad++;
      }
    }
  }
}
