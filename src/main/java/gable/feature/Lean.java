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

  private static final int TERMS = 5;

  /** Leaning by less than this, in radians, is left to the test on the radius. */
  private static final double NEGLIGIBLE = 0.02;

  /** Three times what chance alone would give. */
  private static final double CLEARLY = 3;

  private Lean() {}

  /** True if the facets are parallel to the axis, but for noise. */
  static boolean isUpright(Surface surface, IndexSet facets, Cylinder cylinder) {
    Mesh mesh = surface.mesh();
    double[][] rows = new double[facets.size()][];
    double[] packed = new double[TERMS * (TERMS + 3) / 2];
    double total = 0;
    for (int k = 0; k < rows.length; k++) {
      int facet = facets.get(k);
      double weight = mesh.facetNormal(facet).norm();
      rows[k] = row(surface, facet, cylinder, weight);
      total += weight;
      int at = 0;
      for (int i = 0; i < TERMS; i++) {
        for (int j = i; j <= TERMS; j++) {
          packed[at++] += weight * rows[k][i] * rows[k][j];
        }
      }
    }
    double[] form = NormalEquations.solve(packed, TERMS);
    if (form.length == 0) {
      return true; // less than a turn: the radius must tell
    }
    double shaped = 0;
    double rest = 0;
    for (double[] row : rows) {
      double value = 0;
      for (int i = 0; i < TERMS; i++) {
        value += form[i] * row[i];
      }
      shaped += row[TERMS + 1] * value * value;
      rest += row[TERMS + 1] * (row[TERMS] - value) * (row[TERMS] - value);
    }
    double chance = Math.sqrt(rest / total * TERMS / rows.length);
    return Math.sqrt(shaped / total) <= Math.max(NEGLIGIBLE, CLEARLY * chance);
  }

  /** Root mean square of the axial part of the facets' normals, by area. */
  static double rms(Surface surface, IndexSet facets, Cylinder cylinder) {
    Vec3 w = cylinder.w();
    double sum = 0;
    double total = 0;
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      double weight = surface.mesh().facetNormal(facet).norm();
      double axial =
          surface.nx(facet) * w.x() + surface.ny(facet) * w.y() + surface.nz(facet) * w.z();
      sum += weight * axial * axial;
      total += weight;
    }
    return Math.sqrt(sum / total);
  }

  /** The terms at a facet, the axial part of its normal, and its weight. */
  private static double[] row(Surface surface, int facet, Cylinder c, double weight) {
    Vec3 normal = new Vec3(surface.nx(facet), surface.ny(facet), surface.nz(facet));
    double angle = Math.atan2(normal.dot(c.v()), normal.dot(c.u()));
    return new double[] {
      1,
      Math.cos(angle),
      Math.sin(angle),
      Math.cos(2 * angle),
      Math.sin(2 * angle),
      normal.dot(c.w()),
      weight
    };
  }
}
