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

  /**
   * Steps this small against the radius are the last: on a wall the next one would be its square.
   */
  static final double DONE = 1e-9;

  /**
   * Enough where it is asked only whether there is a wall. What is none takes a dozen steps to
   * {@link #DONE}, each a fifth of the one before, and four or five to this.
   */
  static final double ROUGHLY = 1e-4;

  private CylinderFit() {}

  /**
   * Improves a cylinder.
   *
   * @param start near the solution
   * @param mesh whose vertices are fitted
   * @param vertices vertices to fit; at least five, or the start is returned
   * @param count how many of them
   * @param done steps of less than this, against the radius, are the last
   */
  static Cylinder refine(Cylinder start, Mesh mesh, int[] vertices, int count, double done) {
    if (count < 5) {
      return start;
    }
    Cylinder cylinder = start.from(mean(mesh, vertices, count));
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
      if (largest < done * cylinder.radius()) {
        break;
      }
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
    double ux = c.u().x();
    double uy = c.u().y();
    double uz = c.u().z();
    double vx = c.v().x();
    double vy = c.v().y();
    double vz = c.v().z();
    Sums sums = new Sums();
    for (int k = 0; k < count; k++) {
      double x = mesh.x(vertices[k]) - ox;
      double y = mesh.y(vertices[k]) - oy;
      double z = mesh.z(vertices[k]) - oz;
      double pu = x * ux + y * uy + z * uz;
      double pv = x * vx + y * vy + z * vz;
      double d = Math.sqrt(pu * pu + pv * pv);
      if (d > 0) {
        double pw = x * c.w().x() + y * c.w().y() + z * c.w().z();
        sums.add(pu / d, pv / d, pw, d - c.radius());
      }
    }
    return NormalEquations.solve(sums.packed(), 5);
  }

  /**
   * Sums of the products of the rows (a, b, w a, w b, 1 | r). Spelled out, since in loops over a
   * row they took half of the time of a fit: 20 products for each point, a dozen times.
   */
  private static final class Sums {
    private double aa;
    private double ab;
    private double bb;
    private double waa;
    private double wab;
    private double wbb;
    private double wwaa;
    private double wwab;
    private double wwbb;
    private double a;
    private double b;
    private double wa;
    private double wb;
    private double ar;
    private double br;
    private double war;
    private double wbr;
    private double r;
    private int count;

    void add(double pa, double pb, double w, double residual) {
      double pwa = w * pa;
      double pwb = w * pb;
      aa += pa * pa;
      ab += pa * pb;
      bb += pb * pb;
      waa += pa * pwa;
      wab += pa * pwb;
      wbb += pb * pwb;
      wwaa += pwa * pwa;
      wwab += pwa * pwb;
      wwbb += pwb * pwb;
      a += pa;
      b += pb;
      wa += pwa;
      wb += pwb;
      ar += pa * residual;
      br += pb * residual;
      war += pwa * residual;
      wbr += pwb * residual;
      r += residual;
      count++;
    }

    /** Upper triangle by rows, right-hand side last. */
    double[] packed() {
      return new double[] {
        aa, ab, waa, wab, a, ar, bb, wab, wbb, b, br, wwaa, wwab, wa, war, wwbb, wb, wbr, count, r
      };
    }
  }
}
