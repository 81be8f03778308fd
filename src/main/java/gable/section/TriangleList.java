package gable.section;

import gable.geom.EdgeKey;
import gable.geom.Predicates;
import java.util.HashMap;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;

/**
 * Triangles of a plane figure whose inner edges can be turned: the edge between two triangles is
 * replaced by the other diagonal of their quadrilateral.
 *
 * <p>Half-edge {@code h} runs from corner {@code h} of the list to the next one of the same
 * triangle. Orientation is decided exactly, in the plane into which the figure is projected.
 */
final class TriangleList {

  private final int[] corners;
  private final Map<Integer, Coordinate> points;
  private final Map<Long, Integer> sides = new HashMap<>();

  /**
   * Takes triangles, which are turned in place.
   *
   * @param corners three corner numbers for each triangle, counter-clockwise
   * @param points where the corners are
   */
  TriangleList(int[] corners, Map<Integer, Coordinate> points) {
    this.corners = corners;
    this.points = points;
    for (int h = 0; h < corners.length; h++) {
      sides.put(EdgeKey.of(corners[h], corners[next(h)]), h);
    }
  }

  /** Number of half-edges, three for each triangle. */
  int size() {
    return corners.length;
  }

  int from(int h) {
    return corners[h];
  }

  int to(int h) {
    return corners[next(h)];
  }

  /** The corner across from half-edge {@code h} in its triangle. */
  int apex(int h) {
    return corners[next(next(h))];
  }

  /** The half-edge that runs the other way, or −1 at the boundary. */
  int opposite(int h) {
    return find(to(h), from(h));
  }

  /** The half-edge from one corner to another, or −1 if there is none. */
  int find(int from, int to) {
    return sides.getOrDefault(EdgeKey.of(from, to), -1);
  }

  /** True if the edge lies between two triangles that make a strictly convex quadrilateral. */
  boolean turnable(int h) {
    int other = opposite(h);
    return other >= 0
        && turns(apex(h), from(h), apex(other))
        && turns(apex(other), to(h), apex(h))
        && !sides.containsKey(EdgeKey.of(apex(h), apex(other)));
  }

  /** Replaces an edge that is {@link #turnable} by the other diagonal. */
  void turn(int h) {
    int other = opposite(h);
    int a = from(h);
    int b = to(h);
    int c = apex(h);
    int d = apex(other);
    sides.remove(EdgeKey.of(a, b));
    sides.remove(EdgeKey.of(b, a));
    set(h - h % 3, c, a, d);
    set(other - other % 3, d, b, c);
  }

  private void set(int triangle, int a, int b, int c) {
    corners[triangle] = a;
    corners[triangle + 1] = b;
    corners[triangle + 2] = c;
    sides.put(EdgeKey.of(a, b), triangle);
    sides.put(EdgeKey.of(b, c), triangle + 1);
    sides.put(EdgeKey.of(c, a), triangle + 2);
  }

  private boolean turns(int a, int b, int c) {
    Coordinate p = at(a);
    Coordinate q = at(b);
    Coordinate r = at(c);
    return Predicates.orient2d(p.x, p.y, q.x, q.y, r.x, r.y) > 0;
  }

  /** Where a corner lies in projection. */
  Coordinate at(int id) {
    Coordinate point = points.get(id);
    if (point == null) {
      throw new IllegalStateException("a triangle has a corner that the polygon has not: " + id);
    }
    return point;
  }

  private static int next(int h) {
    return h % 3 == 2 ? h - 2 : h + 1;
  }
}
