package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;

/**
 * Tells a wall from a narrow band of a rounding or a cone, whose points may lie on a cylinder
 * within noise while its facets lean: the axial part of the normals is regressed on 1, cos θ, sin
 * θ, cos 2θ, sin 2θ, weighted by area. Noise tilts facets this way and that; form tilts neighbours
 * alike.
 */
final class Lean {

  private static final int TERMS = 8;

  /** Leaning by less than this, in radians, is left to the test on the radius. */
  private static final double NEGLIGIBLE = 0.02;

  /** Three times what chance alone would give. */
  private static final double CLEARLY = 3;

  private Lean() {}

  /** True if the facets are parallel to the axis, but for noise. */
  static boolean isUpright(Surface surface, IndexSet facets, Cylinder cylinder) {
    double[] heights = heights(surface, facets, cylinder);
    var regression = new Regression(TERMS);
    double[] row = new double[TERMS + 1];
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      fill(row, surface, facet, cylinder, heights);
      regression.add(row, surface.twiceArea(facet));
    }
    if (!regression.solve(TERMS)) {
      return true; // less than a turn: the radius must tell
    }
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      fill(row, surface, facet, cylinder, heights);
      regression.judge(row, surface.twiceArea(facet));
    }
    double chance = Math.sqrt(regression.rest() * TERMS / facets.size());
    return Math.sqrt(regression.shaped()) <= Math.max(NEGLIGIBLE, CLEARLY * chance);
  }

  /** Middle and half of the range of w. */
  private static double[] heights(Surface surface, IndexSet facets, Cylinder cylinder) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < facets.size(); k++) {
      double w = height(surface, facets.get(k), cylinder);
      low = Math.min(low, w);
      high = Math.max(high, w);
    }
    return new double[] {(high + low) / 2, Math.max((high - low) / 2, Double.MIN_NORMAL)};
  }

  private static double height(Surface surface, int facet, Cylinder c) {
    Mesh mesh = surface.mesh();
    return (c.w(mesh.point(mesh.corner(facet, 0)))
            + c.w(mesh.point(mesh.corner(facet, 1)))
            + c.w(mesh.point(mesh.corner(facet, 2))))
        / 3;
  }

  /** Root mean square of the axial part of the facets' normals, by area. */
  static double rms(Surface surface, IndexSet facets, Cylinder cylinder) {
    Vec3 w = cylinder.w();
    double sum = 0;
    double total = 0;
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      double weight = surface.twiceArea(facet);
      double axial =
          surface.nx(facet) * w.x() + surface.ny(facet) * w.y() + surface.nz(facet) * w.z();
      sum += weight * axial * axial;
      total += weight;
    }
    return Math.sqrt(sum / total);
  }

  /** Fills in the terms at a facet, the axial part of its normal last. */
  private static void fill(double[] row, Surface surface, int facet, Cylinder c, double[] heights) {
    Vec3 normal = new Vec3(surface.nx(facet), surface.ny(facet), surface.nz(facet));
    double nu = normal.dot(c.u());
    double nv = normal.dot(c.v());
    double d = Math.max(Math.sqrt(nu * nu + nv * nv), Double.MIN_NORMAL);
    double cosine = nu / d;
    double sine = nv / d;
    double w = (height(surface, facet, c) - heights[0]) / heights[1];
    row[0] = 1;
    row[1] = cosine;
    row[2] = sine;
    row[3] = cosine * cosine - sine * sine;
    row[4] = 2 * cosine * sine;
    row[5] = w;
    row[6] = w * cosine;
    row[7] = w * sine;
    row[TERMS] = normal.dot(c.w());
  }
}
