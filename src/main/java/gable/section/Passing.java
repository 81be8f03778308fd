package gable.section;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Whether something passes through a room, both seen along the way: how much is left between the
 * two at least.
 *
 * <p>Areas are given as rings (u and v of the corners in turn, the first not repeated), each the
 * outline of an area; several add up. Millimetres.
 */
public final class Passing {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private Passing() {}

  /**
   * Least distance between the boundaries of a thing and of the room that it is in; where it is not
   * wholly inside, less than zero: how far it sticks out at most.
   *
   * @param thing rings of the thing
   * @param room rings of the room
   */
  public static double clearance(List<double[]> thing, List<double[]> room) {
    Geometry body = union(thing);
    Geometry space = union(room);
    if (space.covers(body)) {
      return body.getBoundary().distance(space.getBoundary());
    }
    Geometry outside = OverlayNGRobust.overlay(body, space, OverlayNG.DIFFERENCE);
    double most = 0;
    for (Coordinate corner : outside.getCoordinates()) {
      most = Math.max(most, FACTORY.createPoint(corner).distance(space));
    }
    return -most;
  }

  /** A circle, as a ring that lies around it. */
  public static double[] around(double radius, int corners) {
    double[] ring = new double[2 * corners];
    double outer = radius / Math.cos(Math.PI / corners);
    for (int k = 0; k < corners; k++) {
      ring[2 * k] = outer * Math.cos(2 * Math.PI * k / corners);
      ring[2 * k + 1] = outer * Math.sin(2 * Math.PI * k / corners);
    }
    return ring;
  }

  /** A rectangle. */
  public static double[] rectangle(double left, double bottom, double right, double top) {
    return new double[] {left, bottom, right, bottom, right, top, left, top};
  }

  private static Geometry union(List<double[]> rings) {
    List<Geometry> areas = new ArrayList<>();
    for (double[] ring : rings) {
      areas.add(area(ring));
    }
    return OverlayNGRobust.union(FACTORY.buildGeometry(areas));
  }

  private static Geometry area(double[] ring) {
    Coordinate[] corners = new Coordinate[ring.length / 2 + 1];
    for (int k = 0; k < ring.length / 2; k++) {
      corners[k] = new Coordinate(ring[2 * k], ring[2 * k + 1]);
    }
    corners[corners.length - 1] = corners[0].copy();
    Geometry area = FACTORY.createPolygon(corners);
    // an outline through a vertex of the mesh may touch itself
    return area.isValid() ? area : GeometryFixer.fix(area);
  }
}
