package gable.feature;

import gable.mesh.Mesh;
import java.util.Arrays;

/** Chooses the facets from which walls may grow: those at a concave edge that is not sharp. */
final class Seeds {

  /** Flatter than this is rounding of coordinates: 360 facets in a turn make one degree. */
  private static final double FLATTEST = Math.toRadians(0.02);

  private Seeds() {}

  /** The seeds, in an order that depends on the places of facets and not on their numbers. */
  static int[] of(Surface surface) {
    long[] keys = new long[1024];
    int count = 0;
    for (int facet = 0; facet < surface.facetCount(); facet++) {
      if (isSeed(surface, facet)) {
        if (count == keys.length) {
          keys = Arrays.copyOf(keys, 2 * count);
        }
        keys[count++] = key(surface.mesh(), facet);
      }
    }
    Arrays.sort(keys, 0, count);
    int[] seeds = new int[count];
    for (int k = 0; k < count; k++) {
      seeds[k] = (int) keys[k];
    }
    return seeds;
  }

  private static boolean isSeed(Surface surface, int facet) {
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      double turn = surface.turn(h);
      if (turn > FLATTEST && turn <= WallGrower.SHARPEST) {
        return true;
      }
    }
    return false;
  }

  /** A hash of the facet's points above, its number below. */
  private static long key(Mesh mesh, int facet) {
    long sum = 0;
    for (int k = 0; k < 3; k++) {
      int vertex = mesh.corner(facet, k);
      long bits = Double.doubleToLongBits(mesh.x(vertex) + 0.0);
      bits = mixed(bits) + Double.doubleToLongBits(mesh.y(vertex) + 0.0);
      bits = mixed(bits) + Double.doubleToLongBits(mesh.z(vertex) + 0.0);
      sum += mixed(bits); // a sum, since a facet has no first corner
    }
    return (mixed(sum) & 0xFFFFFFFF00000000L) | facet;
  }

  /** Finalizer of a 64-bit mix (D. Stafford's variant 13 of MurmurHash3's). */
  private static long mixed(long bits) {
    long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
