package gable.section;

import gable.geom.Vec3;
import java.util.List;

/**
 * A polygon with holes that lies, within rounding, in a plane in space. Its corners carry numbers,
 * so that a triangulation can be given in numbers and no corner is ever found again by its
 * coordinates.
 *
 * @param normal normal of the plane, any length: from its side the outer ring runs
 *     counter-clockwise and the holes run clockwise
 * @param outer outer ring, not closed by repetition
 * @param holes holes
 */
public record FlatPolygon(Vec3 normal, List<Corner> outer, List<List<Corner>> holes) {

  /**
   * A numbered corner.
   *
   * @param id number, equal for equal corners
   * @param point position
   */
  public record Corner(int id, Vec3 point) {}

  /** Keeps copies. */
  public FlatPolygon {
    outer = List.copyOf(outer);
    holes = holes.stream().map(List::copyOf).toList();
  }

  /** Twice the signed area of a ring as seen from the tip of {@code normal}, times its length. */
  public static double area(List<Corner> ring, Vec3 normal) {
    Vec3 base = ring.get(0).point();
    double sum = 0;
    for (int k = 2; k < ring.size(); k++) {
      Vec3 a = ring.get(k - 1).point().minus(base);
      Vec3 b = ring.get(k).point().minus(base);
      sum += a.cross(b).dot(normal);
    }
    return sum;
  }

  /** True if a point of the plane lies inside a ring, or on its edge one way or the other. */
  public static boolean surrounds(List<Corner> ring, Vec3 normal, Vec3 point) {
    Vec3 u = normal.anySquare();
    Vec3 v = normal.cross(u);
    double px = point.dot(u);
    double py = point.dot(v);
    boolean inside = false;
    Vec3 before = ring.get(ring.size() - 1).point();
    for (Corner corner : ring) {
      Vec3 q = corner.point();
      double ay = before.dot(v) - py;
      double by = q.dot(v) - py;
      if (ay > 0 != by > 0) {
        double ax = before.dot(u) - px;
        double bx = q.dot(u) - px;
        inside ^= ax + (bx - ax) * (ay / (ay - by)) > 0;
      }
      before = q;
    }
    return inside;
  }
}
