package gable.verify;

import gable.geom.Predicates;
import gable.geom.Vec3;

/**
 * Exact signs for facets, with a quick answer where four points lie in a plane square to an axis:
 * flat faces of parts mostly do, and there the filter of an exact predicate never helps.
 */
final class Sides {

  private Sides() {}

  /** Side of {@code d} of the plane a, b, c: 1 where these turn counter-clockwise, 0 in it. */
  static int of(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
    boolean flat =
        (a.x() == b.x() && a.x() == c.x() && a.x() == d.x())
            || (a.y() == b.y() && a.y() == c.y() && a.y() == d.y())
            || (a.z() == b.z() && a.z() == c.z() && a.z() == d.z());
    return flat ? 0 : Predicates.orient3d(a, b, c, d);
  }

  /** True if three points lie on one line. */
  static boolean collinear(Vec3 a, Vec3 b, Vec3 c) {
    return turn(a, b, c, 0) == 0 && turn(a, b, c, 1) == 0 && turn(a, b, c, 2) == 0;
  }

  /** Turn of three points seen along a coordinate axis. */
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
    // zero only if the points share a coordinate (a difference of doubles never underflows; a
    // product of differences above 1e-150 does not either): points in line with an axis
    boolean zero = left == 0 && right == 0 && (ax == cx || by == cy) && (ay == cy || bx == cx);
    return zero ? 0 : Predicates.orient2d(ax, ay, bx, by, cx, cy);
  }

  /** An axis along which a triangle is seen as a triangle; it must not be a line. */
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
