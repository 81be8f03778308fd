package gable.section;

import gable.geom.Predicates;
import java.util.HashMap;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;

/**
 * Takes needles out of a triangulation by turning the edge across their longest side.
 *
 * <p>Corners that lie on one line but for rounding, close together, make triangles without height,
 * and a Delaunay triangulation keeps them: rounding pushes the middle corner out of the circle by
 * more than the circle bulges. Turning the edge gives both corners a triangle with the far one.
 * Only edges between two triangles are turned, only in strictly convex quadrilaterals (exact
 * orientation), and only if the lower of the two heights grows, so it ends.
 */
final class NeedleFlips {

  /**
   * Height in millimetres below which a triangle is a needle: single precision moves a corner at
   * 500 mm by up to 3e-5, and a triangle lower than that may turn over in a reader that uses it.
   */
  private static final double NEEDLE = 1e-4;

  private final int[] corners;
  private final Map<Integer, Coordinate> points;
  private final Map<Long, Integer> sides = new HashMap<>();

  private NeedleFlips(int[] corners, Map<Integer, Coordinate> points) {
    this.corners = corners;
    this.points = points;
    for (int h = 0; h < corners.length; h++) {
      sides.put(key(corners[h], corners[next(h)]), h);
    }
  }

  /**
   * Improves triangles in place.
   *
   * @param corners three corner numbers for each triangle, counter-clockwise
   * @param points where the corners are
   */
  static void improve(int[] corners, Map<Integer, Coordinate> points) {
    NeedleFlips flips = new NeedleFlips(corners, points);
    // each flip raises a height; the bound only guards against a fault of ours
    for (int round = 0; round < corners.length; round++) {
      if (!flips.pass()) {
        return;
      }
    }
  }

  private boolean pass() {
    boolean changed = false;
    for (int triangle = 0; triangle < corners.length; triangle += 3) {
      if (height(corners[triangle], corners[triangle + 1], corners[triangle + 2]) < NEEDLE) {
        changed |= flip(longest(triangle));
      }
    }
    return changed;
  }

  private int longest(int triangle) {
    int best = triangle;
    for (int h = triangle; h < triangle + 3; h++) {
      if (length(h) > length(best)) {
        best = h;
      }
    }
    return best;
  }

  /** Turns the edge of half-edge {@code h} if that makes the worse triangle better. */
  private boolean flip(int h) {
    int a = corners[h];
    int b = corners[next(h)];
    Integer other = sides.get(key(b, a));
    if (other == null) {
      return false;
    }
    int c = corners[next(next(h))];
    int d = corners[next(next(other))];
    boolean convex = turns(c, a, d) && turns(d, b, c);
    double before = Math.min(height(a, b, c), height(b, a, d));
    double after = Math.min(height(c, a, d), height(d, b, c));
    if (!convex || !(after > before) || sides.containsKey(key(c, d))) {
      return false;
    }
    sides.remove(key(a, b));
    sides.remove(key(b, a));
    set(h - h % 3, c, a, d);
    set(other - other % 3, d, b, c);
    return true;
  }

  private void set(int triangle, int a, int b, int c) {
    corners[triangle] = a;
    corners[triangle + 1] = b;
    corners[triangle + 2] = c;
    sides.put(key(a, b), triangle);
    sides.put(key(b, c), triangle + 1);
    sides.put(key(c, a), triangle + 2);
  }

  private boolean turns(int a, int b, int c) {
    Coordinate p = at(a);
    Coordinate q = at(b);
    Coordinate r = at(c);
    return Predicates.orient2d(p.x, p.y, q.x, q.y, r.x, r.y) > 0;
  }

  private double height(int a, int b, int c) {
    Coordinate p = at(a);
    Coordinate q = at(b);
    Coordinate r = at(c);
    double area = Math.abs((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
    double longest = Math.max(p.distance(q), Math.max(q.distance(r), r.distance(p)));
    return longest > 0 ? area / longest : 0;
  }

  private double length(int h) {
    return at(corners[h]).distance(at(corners[next(h)]));
  }

  private Coordinate at(int id) {
    Coordinate point = points.get(id);
    if (point == null) {
      throw new IllegalStateException("a triangle has a corner that the polygon has not: " + id);
    }
    return point;
  }

  private static int next(int h) {
    return h % 3 == 2 ? h - 2 : h + 1;
  }

  private static long key(int from, int to) {
    return (long) from << 32 | to;
  }
}
