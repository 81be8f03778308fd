package gable.feature;

import gable.mesh.Mesh;
import java.util.Arrays;

/** Chooses the facets from which walls may grow: those at a concave edge that is not sharp. */
final class Seeds {

  /** Flatter than this is rounding of coordinates: 360 facets in a turn make one degree. */
  private static final double FLATTEST = Math.toRadians(0.02);

  static final double FLATTEST_COSINE = Math.cos(FLATTEST);

  private Seeds() {}

  /** The seeds, in an order that depends on the places of facets and not on their numbers. */
  static int[] of(Surface surface, Hollows hollows) {
    long[] keys = new long[1024];
    int count = 0;
    for (int facet = 0; facet < surface.facetCount(); facet++) {
      int bend = hollows.isSeed(facet) ? longestBend(surface, facet) : -1;
      if (bend >= 0) {
        if (count == keys.length) {
          keys = Arrays.copyOf(keys, 2 * count);
        }
        keys[count++] = key(surface.mesh(), facet, surface.length(bend));
      }
    }
    Arrays.sort(keys, 0, count);
    int[] seeds = new int[count];
    for (int k = 0; k < count; k++) {
      seeds[k] = (int) keys[k];
    }
    return seeds;
  }

  /**
   * The neighbour to which a facet has its longest concave bend that is not sharp; −1 if there is
   * none.
   */
  static int sharpestBend(Surface surface, int facet) {
    int halfEdge = longestBend(surface, facet);
    return halfEdge < 0 ? -1 : surface.beyond(halfEdge);
  }

  private static int longestBend(Surface surface, int facet) {
    int found = -1;
    double most = 0;
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      double turn = surface.turn(h);
      double length = surface.length(h);
      if (turn > FLATTEST && turn <= Patch.SHARPEST && length > most) {
        most = length;
        found = h;
      }
    }
    return found;
  }

  /**
   * Long bends first, in classes of half an octave, since they tell most: a byte; then a hash of
   * the facet's points; then its number.
   */
  private static long key(Mesh mesh, int facet, double bend) {
    long sum = 0;
    for (int k = 0; k < 3; k++) {
      int vertex = mesh.corner(facet, k);
      long bits = Double.doubleToLongBits(mesh.x(vertex) + 0.0);
      bits = mixed(bits) + Double.doubleToLongBits(mesh.y(vertex) + 0.0);
      bits = mixed(bits) + Double.doubleToLongBits(mesh.z(vertex) + 0.0);
      sum += mixed(bits); // a sum, since a facet has no first corner
    }
    long length = Math.round(64 - 2 * Math.log(Math.max(bend, 1e-9)) / Math.log(2));
    long rank = Math.max(0, Math.min(127, length));
    return (rank << 56) | ((mixed(sum) >>> 8) & 0x00FFFFFF00000000L) | facet;
  }

  /** Finalizer of a 64-bit mix (D. Stafford's variant 13 of MurmurHash3's). */
  private static long mixed(long bits) {
    long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
