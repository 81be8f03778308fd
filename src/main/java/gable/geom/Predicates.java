package gable.geom;

import java.math.BigDecimal;

/**
 * Signs of small determinants of doubles, exact: a floating-point filter first, exact decimal
 * arithmetic where it cannot decide (a double is a finite decimal, so {@link BigDecimal} sums and
 * products of doubles are exact). Every method returns −1, 0 or 1.
 *
 * <p>The filters compare the computed value with a bound on its rounding error in the manner of J.
 * R. Shewchuk, Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates,
 * Discrete &amp; Computational Geometry 18 (1997); the bounds here are looser and derived beside
 * them.
 */
public final class Predicates {

  /** Half a unit in the last place of 1: the largest relative error of one operation. */
  private static final double EPS = 0x1p-53;

  /**
   * The rounding error of a product above this, 53 bits below it, is no smaller than a double can
   * tell.
   */
  private static final double LEAST_EXACT = 0x1p-960;

  private Predicates() {}

  /** Sign of {@code a d − b c}. */
  public static int det2(double a, double b, double c, double d) {
    double left = a * d;
    double right = b * c;
    if (left != right) {
      return left > right ? 1 : -1; // rounding keeps the order of products, or makes them equal
    }
    double size = Math.abs(left);
    if (size > LEAST_EXACT && size <= Double.MAX_VALUE) {
      // of equal products the rounding errors tell, which are doubles themselves
      return Double.compare(Math.fma(a, d, -left), Math.fma(b, c, -right));
    }
    return exact(a).multiply(exact(d)).compareTo(exact(b).multiply(exact(c)));
  }

  /** Sign of the determinant with rows {@code a}, {@code b}, {@code c}. */
  public static int det3(Vec3 a, Vec3 b, Vec3 c) {
    double m0 = b.y() * c.z();
    double m1 = b.z() * c.y();
    double m2 = b.z() * c.x();
    double m3 = b.x() * c.z();
    double m4 = b.x() * c.y();
    double m5 = b.y() * c.x();
    double value = a.x() * (m0 - m1) + a.y() * (m2 - m3) + a.z() * (m4 - m5);
    double size =
        Math.abs(a.x()) * (Math.abs(m0) + Math.abs(m1))
            + Math.abs(a.y()) * (Math.abs(m2) + Math.abs(m3))
            + Math.abs(a.z()) * (Math.abs(m4) + Math.abs(m5));
    // product, difference, product, two sums: five roundings at most on any path
    double bound = 8 * EPS * size + Double.MIN_NORMAL;
    if (value > bound) {
      return 1;
    }
    if (value < -bound) {
      return -1;
    }
    return exactDet3(a, b, c).signum();
  }

  private static BigDecimal exactDet3(Vec3 a, Vec3 b, Vec3 c) {
    return exact(a.x())
        .multiply(minor(b.y(), b.z(), c.y(), c.z()))
        .add(exact(a.y()).multiply(minor(b.z(), b.x(), c.z(), c.x())))
        .add(exact(a.z()).multiply(minor(b.x(), b.y(), c.x(), c.y())));
  }

  private static BigDecimal minor(double a, double b, double c, double d) {
    return exact(a).multiply(exact(d)).subtract(exact(b).multiply(exact(c)));
  }

  /** 1 if the points turn counter-clockwise, −1 if clockwise, 0 if they lie on one line. */
  public static int orient2d(double ax, double ay, double bx, double by, double cx, double cy) {
    double left = (ax - cx) * (by - cy);
    double right = (ay - cy) * (bx - cx);
    double value = left - right;
    // two differences, a product and a difference: four roundings at most on any path
    double bound = 8 * EPS * (Math.abs(left) + Math.abs(right)) + Double.MIN_NORMAL;
    if (value > bound) {
      return 1;
    }
    if (value < -bound) {
      return -1;
    }
    if (isExact(ax, cx) && isExact(by, cy) && isExact(ay, cy) && isExact(bx, cx)) {
      return det2(ax - cx, ay - cy, bx - cx, by - cy);
    }
    BigDecimal x = exact(cx);
    BigDecimal y = exact(cy);
    return exact(ax)
        .subtract(x)
        .multiply(exact(by).subtract(y))
        .compareTo(exact(ay).subtract(y).multiply(exact(bx).subtract(x)));
  }

  /** True if a difference of doubles is one itself (Shewchuk's Two-Diff leaves nothing). */
  private static boolean isExact(double p, double q) {
    double difference = p - q;
    double left = p - difference;
    return p - (difference + left) + (left - q) == 0;
  }

  /**
   * Side of {@code d} with respect to the plane through {@code a}, {@code b}, {@code c}: 1 if it
   * lies on the side from which a, b, c appear counter-clockwise, −1 on the other, 0 in the plane.
   */
  public static int orient3d(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
    Vec3 u = b.minus(a);
    Vec3 v = c.minus(a);
    Vec3 w = d.minus(a);
    double m0 = u.y() * v.z();
    double m1 = u.z() * v.y();
    double m2 = u.z() * v.x();
    double m3 = u.x() * v.z();
    double m4 = u.x() * v.y();
    double m5 = u.y() * v.x();
    double value = w.x() * (m0 - m1) + w.y() * (m2 - m3) + w.z() * (m4 - m5);
    double size =
        Math.abs(w.x()) * (Math.abs(m0) + Math.abs(m1))
            + Math.abs(w.y()) * (Math.abs(m2) + Math.abs(m3))
            + Math.abs(w.z()) * (Math.abs(m4) + Math.abs(m5));
    // three differences of coordinates on each path, then as in det3
    double bound = 16 * EPS * size + Double.MIN_NORMAL;
    if (value > bound) {
      return 1;
    }
    if (value < -bound) {
      return -1;
    }
    return exactOrient3d(a, b, c, d);
  }

  private static int exactOrient3d(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
    BigDecimal[] u = difference(b, a);
    BigDecimal[] v = difference(c, a);
    BigDecimal[] w = difference(d, a);
    return w[0].multiply(u[1].multiply(v[2]).subtract(u[2].multiply(v[1])))
        .add(w[1].multiply(u[2].multiply(v[0]).subtract(u[0].multiply(v[2]))))
        .add(w[2].multiply(u[0].multiply(v[1]).subtract(u[1].multiply(v[0]))))
        .signum();
  }

  private static BigDecimal[] difference(Vec3 p, Vec3 q) {
    return new BigDecimal[] {
      exact(p.x()).subtract(exact(q.x())),
      exact(p.y()).subtract(exact(q.y())),
      exact(p.z()).subtract(exact(q.z()))
    };
  }

  private static BigDecimal exact(double value) {
    return new BigDecimal(value);
  }
}
