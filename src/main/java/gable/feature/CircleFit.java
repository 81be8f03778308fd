package gable.feature;

/**
 * Circles through points of a plane.
 *
 * <p>{@link #taubin} is the algebraic fit of G. Taubin (1991, IEEE Trans. Pattern Analysis 13,
 * 1115–1138), which is nearly free of bias on short arcs; {@link #geometric} minimises the sum of
 * squared distances from the circle by damped Gauss–Newton steps (W. Gander, G. H. Golub, R.
 * Strebel, Least-Squares Fitting of Circles and Ellipses, BIT 34, 1994, 558–578; N. Chernov,
 * Circular and Linear Regression, 2010).
 *
 * @param u first coordinate of the centre
 * @param v second coordinate of the centre
 * @param radius radius, positive; infinite if the points lie on a line
 */
record CircleFit(double u, double v, double radius) {

  private static final int MOST_STEPS = 100;

  /**
   * The algebraic fit.
   *
   * @param uv points, two coordinates each, at least three points
   * @param count number of points to use
   */
  static CircleFit taubin(double[] uv, int count) {
    double mu = 0;
    double mv = 0;
    for (int k = 0; k < count; k++) {
      mu += uv[2 * k];
      mv += uv[2 * k + 1];
    }
    mu /= count;
    mv /= count;
    double z = 0;
    for (int k = 0; k < count; k++) {
      z += square(uv[2 * k] - mu) + square(uv[2 * k + 1] - mv);
    }
    z /= count;
    // centred, with the square scaled, Taubin's constraint becomes that of a unit vector
    double scale = 2 * Math.sqrt(z);
    double[] m = new double[6];
    for (int k = 0; k < count; k++) {
      double x = uv[2 * k] - mu;
      double y = uv[2 * k + 1] - mv;
      double s = (x * x + y * y - z) / scale;
      m[0] += s * s;
      m[1] += s * x;
      m[2] += s * y;
      m[3] += x * x;
      m[4] += x * y;
      m[5] += y * y;
    }
    var least = new SymmetricEigen(m[0], m[1], m[2], m[3], m[4], m[5]).vector(0);
    double a = least.x() / scale;
    double cu = -least.y() / (2 * a);
    double cv = -least.z() / (2 * a);
    return new CircleFit(mu + cu, mv + cv, Math.sqrt(cu * cu + cv * cv + z));
  }

  /** The fit with the least sum of squared distances, from the algebraic one. */
  static CircleFit geometric(double[] uv, int count) {
    CircleFit circle = taubin(uv, count);
    double cost = circle.cost(uv, count);
    double damping = 1e-6;
    for (int step = 0; step < MOST_STEPS; step++) {
      CircleFit next = circle.stepped(uv, count, damping);
      double nextCost = next.cost(uv, count);
      if (nextCost <= cost) {
        double moved = Math.hypot(next.u - circle.u, next.v - circle.v);
        circle = next;
        cost = nextCost;
        damping *= 0.1;
        if (moved <= 1e-15 * circle.radius) {
          break;
        }
      } else {
        damping = 10 * damping + 1e-12;
      }
    }
    return circle;
  }

  /** Sum of squared distances of the points from the circle. */
  double cost(double[] uv, int count) {
    double sum = 0;
    for (int k = 0; k < count; k++) {
      sum += square(Math.hypot(uv[2 * k] - u, uv[2 * k + 1] - v) - radius);
    }
    return sum;
  }

  /** One Gauss–Newton step of the centre; the best radius for it is the mean distance. */
  private CircleFit stepped(double[] uv, int count, double damping) {
    double meanC = 0;
    double meanS = 0;
    double mean = 0;
    for (int k = 0; k < count; k++) {
      double du = uv[2 * k] - u;
      double dv = uv[2 * k + 1] - v;
      double d = Math.hypot(du, dv);
      meanC += du / d / count;
      meanS += dv / d / count;
      mean += d / count;
    }
    double cc = 0;
    double cs = 0;
    double ss = 0;
    double gc = 0;
    double gs = 0;
    for (int k = 0; k < count; k++) {
      double du = uv[2 * k] - u;
      double dv = uv[2 * k + 1] - v;
      double d = Math.hypot(du, dv);
      double c = du / d - meanC;
      double s = dv / d - meanS;
      cc += c * c;
      cs += c * s;
      ss += s * s;
      gc += c * (d - mean);
      gs += s * (d - mean);
    }
    cc *= 1 + damping;
    ss *= 1 + damping;
    double det = cc * ss - cs * cs;
    if (!(det > 0)) {
      return this;
    }
    double nextU = u + (gc * ss - gs * cs) / det;
    double nextV = v + (gs * cc - gc * cs) / det;
    double nextRadius = 0;
    for (int k = 0; k < count; k++) {
      nextRadius += Math.hypot(uv[2 * k] - nextU, uv[2 * k + 1] - nextV) / count;
    }
    return new CircleFit(nextU, nextV, nextRadius);
  }

  private static double square(double x) {
    return x * x;
  }
}
