package gable.verify;

import gable.geom.Predicates;
import gable.geom.Vec3;

/**
 * Exact signs for facets. A floating-point filter answers for most; points that share coordinates
 * are answered by comparing these, since parts are full of upright and level faces, for which a
 * filter never helps; an exact sum answers for the rest.
 */
final class Sides {

  /** Half a unit in the last place of 1: the largest relative error of one operation. */
  private static final double EPS = 0x1p-53;

  private Sides() {}

  /** Side of {@code d} of the plane a, b, c: 1 where these turn counter-clockwise, 0 in it. */
  static int of(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
    double ux = b.x() - a.x();
    double uy = b.y() - a.y();
    double uz = b.z() - a.z();
    double vx = c.x() - a.x();
    double vy = c.y() - a.y();
    double vz = c.z() - a.z();
    double wx = d.x() - a.x();
    double wy = d.y() - a.y();
    double wz = d.z() - a.z();
    double p = uy * vz;
    double q = uz * vy;
    double r = uz * vx;
    double s = ux * vz;
    double t = ux * vy;
    double o = uy * vx;
    double value = wx * (p - q) + wy * (r - s) + wz * (t - o);
    double size =
        Math.abs(wx) * (Math.abs(p) + Math.abs(q))
            + Math.abs(wy) * (Math.abs(r) + Math.abs(s))
            + Math.abs(wz) * (Math.abs(t) + Math.abs(o));
    // a rounding of a difference for each of three factors, one or two of products, three of sums:
    // eight on any path; twice that leaves room for terms of second order
    if (Math.abs(value) > 16 * EPS * size + Double.MIN_NORMAL) {
      return value > 0 ? 1 : -1;
    }
    return close(a, b, c, d);
  }

  private static int close(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
    for (int axis = 0; axis < 3; axis++) {
      double level = a.get(axis);
      if (level == b.get(axis) && level == c.get(axis) && level == d.get(axis)) {
        return 0;
      }
    }
    for (int axis = 0; axis < 3; axis++) {
      // two points one above the other, seen along the axis: the others turn about them. An even
      // permutation of the four points keeps the sign.
      if (aligned(a, b, axis)) {
        return above(a, b, c, d, axis);
      }
      if (aligned(c, d, axis)) {
        return above(c, d, a, b, axis);
      }
      if (aligned(a, c, axis)) {
        return above(a, c, d, b, axis);
      }
      if (aligned(b, d, axis)) {
        return above(d, b, a, c, axis);
      }
      if (aligned(a, d, axis)) {
        return above(a, d, b, c, axis);
      }
      if (aligned(b, c, axis)) {
        return above(b, c, a, d, axis);
      }
    }
    return exactly(a, b, c, d);
  }

  private static boolean aligned(Vec3 p, Vec3 q, int axis) {
    int u = (axis + 1) % 3;
    int v = (axis + 2) % 3;
    return p.get(u) == q.get(u) && p.get(v) == q.get(v);
  }

  /**
   * Orientation of p, q, r, s where q − p is parallel to an axis: (q − p) × (r − p) · (s − p) is
   * the length of q − p times the turn of p, r, s seen against the axis.
   */
  private static int above(Vec3 p, Vec3 q, Vec3 r, Vec3 s, int axis) {
    int direction = Double.compare(q.get(axis), p.get(axis));
    return direction == 0 ? 0 : direction * turn(p, r, s, axis);
  }

  private static int exactly(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
    double[] near = new double[9];
    double[] rest = new double[9];
    for (int axis = 0; axis < 3; axis++) {
      Vec3[] ends = {b, c, d};
      for (int k = 0; k < 3; k++) {
        near[3 * k + axis] = ends[k].get(axis) - a.get(axis);
        rest[3 * k + axis] = ExactSum.lost(ends[k].get(axis), a.get(axis));
        if (!ExactSum.safe(near[3 * k + axis]) || !ExactSum.safe(rest[3 * k + axis])) {
          return Predicates.orient3d(a, b, c, d);
        }
      }
    }
    ExactSum sum = new ExactSum();
    for (int axis = 0; axis < 3; axis++) {
      int next = (axis + 1) % 3;
      int last = (axis + 2) % 3;
      addProduct(sum, near, rest, axis, 3 + next, 6 + last, 1);
      addProduct(sum, near, rest, axis, 3 + last, 6 + next, -1);
    }
    return sum.sign();
  }

  /** Adds the product of three differences, each a near value and what was lost. */
  private static void addProduct(
      ExactSum sum, double[] near, double[] rest, int i, int j, int k, int sign) {
    for (int choice = 0; choice < 8; choice++) {
      double first = (choice & 1) == 0 ? near[i] : rest[i];
      double second = (choice & 2) == 0 ? near[j] : rest[j];
      double third = (choice & 4) == 0 ? near[k] : rest[k];
      sum.addProduct(sign * first, second, third);
    }
  }

  /** True if three points lie on one line. */
  static boolean collinear(Vec3 a, Vec3 b, Vec3 c) {
    return turn(a, b, c, 0) == 0 && turn(a, b, c, 1) == 0 && turn(a, b, c, 2) == 0;
  }

  /** Turn of three points seen against a coordinate axis: 1 counter-clockwise. */
  static int turn(Vec3 a, Vec3 b, Vec3 c, int axis) {
    int u = (axis + 1) % 3;
    int v = (axis + 2) % 3;
    double ax = a.get(u);
    double ay = a.get(v);
    double bx = b.get(u);
    double by = b.get(v);
    double cx = c.get(u);
    double cy = c.get(v);
    double left = (ax - cx) * (by - cy);
    double right = (ay - cy) * (bx - cx);
    double value = left - right;
    // two differences, a product and a difference: four roundings at most on any path, twice that
    if (Math.abs(value) > 8 * EPS * (Math.abs(left) + Math.abs(right)) + Double.MIN_NORMAL) {
      return value > 0 ? 1 : -1;
    }
    if (ax == cx || by == cy) {
      return -sign(ay, cy) * sign(bx, cx); // the left product is zero
    }
    if (ay == cy || bx == cx) {
      return sign(ax, cx) * sign(by, cy);
    }
    return exactly(ax, ay, bx, by, cx, cy);
  }

  /** Sign of a difference, which is never lost in rounding. */
  private static int sign(double p, double q) {
    return p > q ? 1 : p < q ? -1 : 0;
  }

  private static int exactly(double ax, double ay, double bx, double by, double cx, double cy) {
    double[] near = {ax - cx, by - cy, ay - cy, bx - cx};
    double[] rest = {
      ExactSum.lost(ax, cx), ExactSum.lost(by, cy), ExactSum.lost(ay, cy), ExactSum.lost(bx, cx)
    };
    for (int k = 0; k < 4; k++) {
      if (!ExactSum.safe(near[k]) || !ExactSum.safe(rest[k])) {
        return Predicates.orient2d(ax, ay, bx, by, cx, cy);
      }
    }
    ExactSum sum = new ExactSum();
    for (int choice = 0; choice < 4; choice++) {
      sum.addProduct((choice & 1) == 0 ? near[0] : rest[0], (choice & 2) == 0 ? near[1] : rest[1]);
      sum.addProduct(
          (choice & 1) == 0 ? -near[2] : -rest[2], (choice & 2) == 0 ? near[3] : rest[3]);
    }
    return sum.sign();
  }

  /** An axis along which a triangle is seen as a triangle; any if it is a line. */
  static int seenAlong(Vec3 a, Vec3 b, Vec3 c) {
    Vec3 n = b.minus(a).cross(c.minus(a));
    int best = 0;
    for (int axis = 1; axis < 3; axis++) {
      if (Math.abs(n.get(axis)) > Math.abs(n.get(best))) {
        best = axis;
      }
    }
    // a sliver may round to a wrong normal: then any axis that shows it will do
    for (int k = 0; k < 3 && turn(a, b, c, best) == 0; k++) {
      best = (best + 1) % 3;
    }
    return best;
  }
}
