package gable.section;

import gable.geom.Predicates;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;

/**
 * Triangulates a {@link FlatPolygon} without new points: JTS cuts ears off in the coordinate plane
 * into which the polygon projects largest (dropping a coordinate rounds nothing), and the diagonals
 * are then settled in the plane of the polygon. (JTS would make them Delaunay in projection; where
 * many points lie on one circle it turns the same edges two hundred times.)
 *
 * <p>The result has one triangle for each corner less two, and two more for each hole, all
 * counter-clockwise seen from the tip of the normal and none without area in projection; a polygon
 * for which JTS gives anything else, because it touches or crosses itself, has no result.
 */
public final class PlanarTriangulation {

  private final Projection projection;
  private final Map<Coordinate, Integer> ids = new HashMap<>();
  private int corners;

  private PlanarTriangulation(Projection projection) {
    this.projection = projection;
  }

  /**
   * Triangles as corner numbers, three each.
   *
   * @return the triangles, or nothing if the polygon is not simple
   */
  public static Optional<int[]> of(FlatPolygon polygon) {
    PlanarTriangulation work = new PlanarTriangulation(Projection.along(polygon.normal()));
    if (polygon.holes().isEmpty() && polygon.outer().size() == 3) {
      return work.single(polygon.outer());
    }
    return work.triangulate(polygon);
  }

  private Optional<int[]> single(List<FlatPolygon.Corner> ring) {
    Coordinate a = projection.of(ring.get(0).point());
    Coordinate b = projection.of(ring.get(1).point());
    Coordinate c = projection.of(ring.get(2).point());
    return Predicates.orient2d(a.x, a.y, b.x, b.y, c.x, c.y) > 0
        ? Optional.of(new int[] {ring.get(0).id(), ring.get(1).id(), ring.get(2).id()})
        : Optional.empty();
  }

  private Optional<int[]> triangulate(FlatPolygon polygon) {
    GeometryFactory factory = new GeometryFactory();
    LinearRing shell = ring(polygon.outer(), factory);
    LinearRing[] holes =
        polygon.holes().stream().map(hole -> ring(hole, factory)).toArray(LinearRing[]::new);
    if (ids.size() != corners) {
      return Optional.empty();
    }
    Polygon flat = factory.createPolygon(shell, holes);
    if (!flat.isValid()) {
      return Optional.empty();
    }
    Geometry triangles;
    try {
      triangles = new PolygonTriangulator(flat).getResult();
    } catch (RuntimeException gaveUp) {
      // the library says so in this way where it cannot cut an ear off a ring that rounding spoiled
      return Optional.empty();
    }
    int expected = corners - 2 + 2 * holes.length;
    return triangles.getNumGeometries() == expected
        ? numbered(triangles, polygon)
        : Optional.empty();
  }

  private LinearRing ring(List<FlatPolygon.Corner> ring, GeometryFactory factory) {
    Coordinate[] closed = new Coordinate[ring.size() + 1];
    for (int k = 0; k < ring.size(); k++) {
      closed[k] = projection.of(ring.get(k).point());
      ids.put(closed[k], ring.get(k).id());
    }
    closed[ring.size()] = closed[0].copy();
    corners += ring.size();
    return factory.createLinearRing(closed);
  }

  private Optional<int[]> numbered(Geometry triangles, FlatPolygon polygon) {
    List<Integer> result = new ArrayList<>();
    for (int k = 0; k < triangles.getNumGeometries(); k++) {
      Coordinate[] t = triangles.getGeometryN(k).getCoordinates();
      int turn = Predicates.orient2d(t[0].x, t[0].y, t[1].x, t[1].y, t[2].x, t[2].y);
      if (turn == 0) {
        return Optional.empty();
      }
      result.add(ids.get(t[0]));
      result.add(ids.get(turn > 0 ? t[1] : t[2]));
      result.add(ids.get(turn > 0 ? t[2] : t[1]));
    }
    int[] corners = result.stream().mapToInt(Integer::intValue).toArray();
    Map<Integer, Coordinate> points = new HashMap<>();
    ids.forEach((point, id) -> points.put(id, point));
    TriangleList list = new TriangleList(corners, points);
    SettledDiagonals.settle(list, polygon);
    NeedleFlips.improve(list);
    return Optional.of(corners);
  }

  /** Drops one coordinate; the two that stay are right-handed seen from the tip of the normal. */
  private record Projection(int first, int second) {

    static Projection along(Vec3 normal) {
      double x = Math.abs(normal.x());
      double y = Math.abs(normal.y());
      double z = Math.abs(normal.z());
      int drop = z >= x && z >= y ? 2 : x >= y ? 0 : 1;
      int first = (drop + 1) % 3;
      int second = (drop + 2) % 3;
      return normal.get(drop) > 0 ? new Projection(first, second) : new Projection(second, first);
    }

    Coordinate of(Vec3 p) {
      return new Coordinate(p.get(first), p.get(second));
    }
  }
}
