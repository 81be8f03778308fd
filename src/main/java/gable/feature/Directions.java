package gable.feature;

import java.util.Arrays;

/** Counts the directions in which the facets of a wall look. */
final class Directions {

  /** Facets within this of each other may be one direction that noise has spread. */
  private static final double GAP = Math.toRadians(12);

  private Directions() {}

  /**
   * Number of distinct directions about the axis. Groups of directions are kept apart by gaps; a
   * group wider than a gap counts as many as gaps fit into it, so that a finely meshed wall, which
   * has no gaps at all, counts 30.
   */
  static int count(Surface surface, int[] wall, Cylinder cylinder) {
    double[] angles = new double[wall.length];
    for (int k = 0; k < wall.length; k++) {
      int facet = wall[k];
      double x = surface.nx(facet);
      double y = surface.ny(facet);
      double z = surface.nz(facet);
      double nu = x * cylinder.u().x() + y * cylinder.u().y() + z * cylinder.u().z();
      double nv = x * cylinder.v().x() + y * cylinder.v().y() + z * cylinder.v().z();
      angles[k] = Math.atan2(nv, nu);
    }
    Arrays.sort(angles);
    int start = 0;
    for (int k = 1; k < angles.length; k++) {
      if (angles[k] - angles[k - 1] > GAP) {
        start = k;
        break;
      }
    }
    int count = 0;
    double groupStart = angles[start];
    double last = groupStart;
    for (int k = 1; k <= angles.length; k++) {
      int at = (start + k) % angles.length;
      double angle = angles[at] + (start + k >= angles.length ? Angles.TURN : 0);
      if (k == angles.length || angle - last > GAP) {
        count += 1 + (int) ((last - groupStart) / GAP);
        groupStart = angle;
      }
      last = angle;
    }
    return count;
  }
}
