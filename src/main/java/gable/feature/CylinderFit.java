package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;

/**
 * Least-squares cylinder: the sum of squared radial distances of points is minimised over all five
 * parameters by Gauss–Newton steps (C. M. Shakarji, Least-Squares Fitting Algorithms of the NIST
 * Algorithm Testing System, J. Res. NIST 103, 1998, 633–641). Residuals are small against the
 * radius wherever the result is used, so the steps converge quadratically from the start that the
 * normals and a circle fit give.
 */
final class CylinderFit {

  private static final int MOST_STEPS = 12;

  /** Steps this small against the radius are the last: the next one would be its square. */
  private static final double DONE = 1e-9;

  /**
   * From this step on each must be at most half of the one before, as quadratic ones are by far; a
   * fit whose steps are not is none, and twelve of them tell no more.
   */
  private static final int CONVERGING = 4;

  private CylinderFit() {}

  /**
   * Improves a cylinder.
   *
   * @param start near the solution
   * @param mesh whose vertices are fitted
   * @param vertices vertices to fit; at least five, or the start is returned
   * @param count how many of them
   */
  static Cylinder refine(Cylinder start, Mesh mesh, int[] vertices, int count) {
    if (count < 5) {
      return start;
    }
    Cylinder cylinder = start.from(mean(mesh, vertices, count));
    double before = Double.POSITIVE_INFINITY;
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] change = step(cylinder, mesh, vertices, count);
      if (change.length == 0) {
        return cylinder;
      }
      Cylinder next = moved(cylinder, change);
      if (!(next.radius() > 0) || !Double.isFinite(next.radius())) {
        return cylinder;
      }
      cylinder = next;
      double largest = Math.abs(change[0]) + Math.abs(change[1]) + Math.abs(change[4]);
      boolean converges = step < CONVERGING || largest <= before / 2;
      if (largest < DONE * cylinder.radius() || !converges) {
        break;
      }
      before = largest;
    }
    return cylinder;
  }

  private static Vec3 mean(Mesh mesh, int[] vertices, int count) {
    Vec3 base = mesh.point(vertices[0]);
    Vec3 sum = Vec3.ZERO;
    for (int k = 1; k < count; k++) {
      sum = sum.plus(mesh.point(vertices[k]).minus(base));
    }
    return base.along(sum, 1.0 / count);
  }

  private static Cylinder moved(Cylinder c, double[] change) {
    Vec3 direction = c.w().along(c.u(), change[2]).along(c.v(), change[3]).unit();
    Vec3 origin = c.origin().along(c.u(), change[0]).along(c.v(), change[1]);
    Vec3 u = c.u().along(direction, -c.u().dot(direction)).unit();
    return new Cylinder(origin, u, direction.cross(u), direction, c.radius() + change[4]);
  }

  /** One step: shift along u and v, tilt towards u and v, change of radius; empty if singular. */
  private static double[] step(Cylinder c, Mesh mesh, int[] vertices, int count) {
    double ox = c.origin().x();
    double oy = c.origin().y();
    double oz = c.origin().z();
    double[] normal = new double[20]; // upper triangle by rows, right-hand side last
    double[] row = new double[6];
    for (int k = 0; k < count; k++) {
      double x = mesh.x(vertices[k]) - ox;
      double y = mesh.y(vertices[k]) - oy;
      double z = mesh.z(vertices[k]) - oz;
      double pu = x * c.u().x() + y * c.u().y() + z * c.u().z();
      double pv = x * c.v().x() + y * c.v().y() + z * c.v().z();
      double pw = x * c.w().x() + y * c.w().y() + z * c.w().z();
      double d = Math.sqrt(pu * pu + pv * pv);
      if (!(d > 0)) {
        continue;
      }
      row[0] = pu / d;
      row[1] = pv / d;
      row[2] = pw * row[0];
      row[3] = pw * row[1];
      row[4] = 1;
      row[5] = d - c.radius();
      int at = 0;
      for (int i = 0; i < 5; i++) {
        for (int j = i; j < 6; j++) {
          normal[at++] += row[i] * row[j];
        }
      }
    }
    return NormalEquations.solve(normal, 5);
  }
}
