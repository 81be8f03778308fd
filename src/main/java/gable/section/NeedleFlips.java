package gable.section;

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

  private final TriangleList list;

  private NeedleFlips(TriangleList list) {
    this.list = list;
  }

  /** Improves triangles in place. */
  static void improve(TriangleList list) {
    NeedleFlips flips = new NeedleFlips(list);
    // each flip raises a height; the bound only guards against a fault of ours
    for (int round = 0; round < list.size(); round++) {
      if (!flips.pass()) {
        return;
      }
    }
  }

  private boolean pass() {
    boolean changed = false;
    for (int h = 0; h < list.size(); h += 3) {
      if (height(list.from(h), list.to(h), list.apex(h)) < NEEDLE) {
        changed |= flip(longest(h));
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
    if (!list.turnable(h)) {
      return false;
    }
    int a = list.from(h);
    int b = list.to(h);
    int c = list.apex(h);
    int d = list.apex(list.opposite(h));
    double before = Math.min(height(a, b, c), height(b, a, d));
    double after = Math.min(height(c, a, d), height(d, b, c));
    if (!(after > before)) {
      return false;
    }
    list.turn(h);
    return true;
  }

  private double height(int a, int b, int c) {
    Coordinate p = list.at(a);
    Coordinate q = list.at(b);
    Coordinate r = list.at(c);
    double area = Math.abs((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
    double longest = Math.max(p.distance(q), Math.max(q.distance(r), r.distance(p)));
    return longest > 0 ? area / longest : 0;
  }

  private double length(int h) {
    return list.at(list.from(h)).distance(list.at(list.to(h)));
  }
}
