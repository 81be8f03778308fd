package gable.feature;

import gable.mesh.Mesh;

/**
 * How a patch bends, in running sums over its inner edges: on the whole, and in which directions.
 *
 * <p>Each edge contributes the sine of its turn times its length along its own direction. The sum
 * of these tensors is the curvature of the patch times its area (D. Cohen-Steiner and J.-M. Morvan,
 * Restricted Delaunay triangulations and normal cycle, SoCG 2003): on a round wall it has one
 * eigenvalue other than zero, that along the axis; on a ball two that are equal, on a saddle two of
 * opposite sign. Noise cancels but for the patch's border.
 */
final class PatchBends {

  /**
   * A wall bends along its axis by less than this share of its bend about the axis; a torus bends
   * that way by the ratio of its radii.
   */
  private static final double LEAST_SECOND = 0.1;

  /**
   * What noise leaves of a second bend, as a share of all bends over the square root of the number
   * of facets. Estimate, from walls with 3 to 10 micrometres of noise on facets of 0.1 to 0.5
   * millimetres: of patches of 64 to 256 facets nineteen in twenty were below.
   */
  private static final double CHANCE = 0.5;

  private final Surface surface;
  private final Mesh mesh;
  private double sum;
  private double all;
  private double xx;
  private double xy;
  private double xz;
  private double yy;
  private double yz;
  private double zz;

  PatchBends(Surface surface) {
    this.surface = surface;
    this.mesh = surface.mesh();
  }

  void clear() {
    sum = 0;
    all = 0;
    xx = 0;
    xy = 0;
    xz = 0;
    yy = 0;
    yz = 0;
    zz = 0;
  }

  /** Adds the bend at a half-edge towards another facet of the patch. */
  void add(int halfEdge, int other) {
    int facet = halfEdge / 3;
    double ax = surface.nx(facet);
    double ay = surface.ny(facet);
    double az = surface.nz(facet);
    double bx = surface.nx(other);
    double by = surface.ny(other);
    double bz = surface.nz(other);
    double cx = az * by - ay * bz;
    double cy = ax * bz - az * bx;
    double cz = ay * bx - ax * by;
    int from = mesh.origin(halfEdge);
    int to = mesh.target(halfEdge);
    double ex = mesh.x(to) - mesh.x(from);
    double ey = mesh.y(to) - mesh.y(from);
    double ez = mesh.z(to) - mesh.z(from);
    double bend = cx * ex + cy * ey + cz * ez;
    sum += bend;
    all += Math.abs(bend);
    xx += cx * ex;
    xy += (cx * ey + cy * ex) / 2;
    xz += (cx * ez + cz * ex) / 2;
    yy += cy * ey;
    yz += (cy * ez + cz * ey) / 2;
    zz += cz * ez;
  }

  /**
   * How much more the patch is concave than convex, as a share of all its bends: 1 for a clean
   * bore, 0 for a surface that only waves or is rough.
   */
  double hollowness() {
    return all > 0 ? sum / all : 1;
  }

  /**
   * True if the patch bends two ways, and by more than noise on a round wall would explain.
   *
   * @param facets size of the patch
   */
  boolean isTwofold(int facets) {
    if (!(sum > 0)) {
      return false; // not hollow at all, which is told elsewhere
    }
    var eigen = new SymmetricEigen(xx, xy, xz, yy, yz, zz);
    double second = Math.max(Math.abs(eigen.value(0)), Math.abs(eigen.value(1)));
    return second > LEAST_SECOND * eigen.value(2) + CHANCE * all / Math.sqrt(facets);
  }
}
