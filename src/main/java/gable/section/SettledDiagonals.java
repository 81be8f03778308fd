package gable.section;

import gable.geom.Vec3;
import gable.section.FlatPolygon.Corner;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Turns the inner edges of a triangulated polygon until they depend on its shape alone: neither on
 * the order and numbers of its corners nor, where its shape allows that, on a turn about z.
 *
 * <p>The rule is Delaunay's in the polygon's own plane (the angles across an edge make up at most
 * half a turn), since in a projection circles become ellipses that a turn changes. Of two diagonals
 * that are equally good but for rounding, the one is taken that ends in the highest of the four
 * corners along a direction that fits no edge. That is the limit of giving each corner a weight,
 * the higher the larger, so the choices agree with each other: such a triangulation is unique (J.
 * De Loera, J. Rambau, F. Santos, Triangulations, 2010: pulling).
 *
 * <p>The direction is taken from the plane, where it is not level; in a level polygon from where
 * its corners crowd; and where they do not, as in a rectangle, from the coordinates. Then a turn
 * may show, as nothing about the polygon tells one of its sides from the other.
 */
final class SettledDiagonals {

  /**
   * How far corners may stray, mm: the step of the numbers written. Rounding moves each end of an
   * edge by up to half of it along each axis, so the ends part by a step only if both are at their
   * worst; larger steps would take for equal what is not, where corners are close together.
   */
  private static final double STEP = 1e-6;

  /** The same for double precision at a metre. */
  private static final double EXACT = 1e-12;

  /** Angles further apart than this are never equal, however short the edges are: 0.06 degrees. */
  private static final double MOST_SLACK = 1e-3;

  /** A plane that leans less than this counts as level, as sine. */
  private static final double LEVEL = 1e-3;

  /** Corners whose middle is this near to the middle of the area do not crowd anywhere, mm. */
  private static final double EVEN = 1e-2;

  /**
   * Keeps the direction off the edges of usual polygons; the golden ratio is far from fractions.
   */
  private static final double OFF = 0.6180339887498949;

  private final TriangleList list;
  private final Map<Integer, Vec3> places = new HashMap<>();
  private final Vec3 direction;

  private SettledDiagonals(TriangleList list, FlatPolygon polygon) {
    this.list = list;
    put(polygon.outer());
    polygon.holes().forEach(this::put);
    this.direction = direction(polygon.normal().unit());
  }

  private void put(List<Corner> ring) {
    ring.forEach(corner -> places.put(corner.id(), corner.point()));
  }

  /** Turns edges in place. */
  static void settle(TriangleList list, FlatPolygon polygon) {
    SettledDiagonals work = new SettledDiagonals(list, polygon);
    // Equalities within the slack may not agree with each other, so that what they lead to depends
    // on the start; the first round gives a start that does not depend on the order of corners.
    work.settle(EXACT);
    work.settle(STEP);
  }

  private void settle(double step) {
    // ends by itself but for equalities that do not agree with each other
    for (int round = 0; round < list.size(); round++) {
      if (!pass(step)) {
        return;
      }
    }
  }

  /** An edge by its corners, the higher one first, and how high they are. */
  private record Edge(int high, int low, double highest, double lowest) {}

  private boolean pass(double step) {
    List<Edge> edges = new ArrayList<>();
    for (int h = 0; h < list.size(); h++) {
      double from = height(at(list.from(h)));
      double to = height(at(list.to(h)));
      if (from >= to && list.turnable(h)) {
        edges.add(new Edge(list.from(h), list.to(h), from, to));
      }
    }
    edges.sort(
        Comparator.comparingDouble(Edge::highest).thenComparingDouble(Edge::lowest).reversed());
    boolean changed = false;
    for (Edge edge : edges) {
      int h = list.find(edge.high, edge.low);
      if (h >= 0 && list.turnable(h) && better(h, step)) {
        list.turn(h);
        changed = true;
      }
    }
    return changed;
  }

  /** Is the other diagonal better than edge {@code h}, if corners may stray by a step? */
  private boolean better(int h, double step) {
    Vec3 a = at(list.from(h));
    Vec3 b = at(list.to(h));
    Vec3 c = at(list.apex(h));
    Vec3 d = at(list.apex(list.opposite(h)));
    double excess = angle(a, c, b) + angle(b, d, a) - Math.PI;
    // a corner that strays by a step turns an edge by a step over its length; four edges turn
    double edges = 1 / a.distance(c) + 1 / c.distance(b) + 1 / b.distance(d) + 1 / d.distance(a);
    double slack = Math.min(MOST_SLACK, step * edges);
    if (Math.abs(excess) > slack) {
      return excess > 0;
    }
    return Math.max(height(c), height(d)) > Math.max(height(a), height(b));
  }

  private static double angle(Vec3 from, Vec3 at, Vec3 to) {
    Vec3 p = from.minus(at);
    Vec3 q = to.minus(at);
    return Math.atan2(p.cross(q).norm(), p.dot(q));
  }

  private double height(Vec3 point) {
    return point.dot(direction);
  }

  private Vec3 at(int id) {
    Vec3 place = places.get(id);
    if (place == null) {
      throw new IllegalStateException("a triangle has a corner that the polygon has not: " + id);
    }
    return place;
  }

  private Vec3 direction(Vec3 normal) {
    Vec3 level = Vec3.Z.cross(normal);
    Vec3 first = level;
    if (level.norm() < LEVEL) {
      Vec3 crowd = crowd();
      first = crowd.norm() < EVEN ? Vec3.X : crowd;
    }
    Vec3 along = first.minus(normal.times(first.dot(normal))).unit();
    return normal.cross(along).along(along, OFF);
  }

  /** From the middle of the area to the middle of the corners. */
  private Vec3 crowd() {
    Vec3 base = at(list.from(0));
    Vec3 corners = Vec3.ZERO;
    for (Vec3 place : places.values()) {
      corners = corners.plus(place.minus(base));
    }
    Vec3 area = Vec3.ZERO;
    double whole = 0;
    for (int h = 0; h < list.size(); h += 3) {
      Vec3 a = at(list.from(h)).minus(base);
      Vec3 b = at(list.to(h)).minus(base);
      Vec3 c = at(list.apex(h)).minus(base);
      double size = b.minus(a).cross(c.minus(a)).norm();
      area = area.plus(a.plus(b).plus(c).times(size / 3));
      whole += size;
    }
    return corners.times(1.0 / places.size()).minus(area.times(1 / whole));
  }
}
