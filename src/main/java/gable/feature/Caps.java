package gable.feature;

/** Tells how the normals of a piece of a surface spread over the sphere. */
final class Caps {

  /**
   * Normals within this cosine of their mean direction do not reach around a bore: the shortest arc
   * of wall that counts covers 200 degrees, its facets' middles cover one step of an octagon less,
   * and half of 155 degrees has the cosine 0.216 to its middle, and a larger one to no direction.
   */
  private static final float CAP = 0.22f;

  /**
   * Of a cap whose normals all lean alike from their mean, as on a flank of a thread or on a cone,
   * 1 − cosine scatters by less than this share of its mean; a dish whose normals fill a disc
   * evenly has 0.577 = 1/√3, a random wave 1 (derived).
   */
  private static final double MOST_SCATTER = 0.4;

  private Caps() {}

  /** True if the normals of a piece lie in one cap of the sphere. */
  static boolean isCap(Surface surface, int[] piece, int from, int to) {
    double[] sum = sum(surface, piece, from, to);
    double least = CAP * Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
    for (int k = from; k < to; k++) {
      if (along(surface, piece[k], sum) <= least && !surface.isSliver(piece[k])) {
        return false;
      }
    }
    return true;
  }

  /** True if the normals of a piece lean from their mean by much the same angle. */
  static boolean leansAlike(Surface surface, int[] piece, int from, int to) {
    double[] total = sum(surface, piece, from, to);
    double norm = Math.sqrt(total[0] * total[0] + total[1] * total[1] + total[2] * total[2]);
    double sum = 0;
    double squares = 0;
    for (int k = from; k < to; k++) {
      double rise = surface.isSliver(piece[k]) ? 0 : 1 - along(surface, piece[k], total) / norm;
      sum += rise;
      squares += rise * rise;
    }
    double mean = sum / (to - from);
    return squares / (to - from) - mean * mean < MOST_SCATTER * MOST_SCATTER * mean * mean;
  }

  private static double[] sum(Surface surface, int[] piece, int from, int to) {
    double x = 0;
    double y = 0;
    double z = 0;
    for (int k = from; k < to; k++) {
      x += surface.nx(piece[k]);
      y += surface.ny(piece[k]);
      z += surface.nz(piece[k]);
    }
    return new double[] {x, y, z};
  }

  private static double along(Surface surface, int facet, double[] sum) {
    return surface.nx(facet) * sum[0] + surface.ny(facet) * sum[1] + surface.nz(facet) * sum[2];
  }
}
