package gable.section;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * A rectangle of a section plane through which outlines are seen.
 *
 * @param left smallest u
 * @param bottom smallest v
 * @param right largest u
 * @param top largest v
 */
public record Window(double left, double bottom, double right, double top) {

  /** Refuses a window without area. */
  public Window {
    if (!(left < right && bottom < top)) {
      throw new IllegalArgumentException(
          "no window: " + left + ", " + bottom + ", " + right + ", " + top);
    }
  }

  /** Width. */
  public double width() {
    return right - left;
  }

  /** Height. */
  public double height() {
    return top - bottom;
  }

  /**
   * What is inside the window of the area that a ring encloses, as closed rings that turn the same
   * way as the ring, their holes the other way: filled by the nonzero rule, they add up to the
   * solid as the whole rings do.
   *
   * @param ring u and v of its corners in turn, the first not repeated
   */
  public List<double[]> clipped(double[] ring) {
    if (ring.length < 6) {
      return List.of();
    }
    Coordinate[] corners = new Coordinate[ring.length / 2 + 1];
    for (int k = 0; k < ring.length / 2; k++) {
      corners[k] = new Coordinate(ring[2 * k], ring[2 * k + 1]);
    }
    corners[corners.length - 1] = corners[0].copy();
    GeometryFactory factory = new GeometryFactory();
    Geometry area = factory.createPolygon(corners);
    if (!area.isValid()) {
      area = GeometryFixer.fix(area); // an outline through a vertex of the mesh may touch itself
    }
    Geometry seen = OverlayNGRobust.overlay(area, rectangle(factory), OverlayNG.INTERSECTION);
    boolean counterClockwise = twiceArea(ring) > 0;
    List<double[]> rings = new ArrayList<>();
    for (int k = 0; k < seen.getNumGeometries(); k++) {
      if (seen.getGeometryN(k) instanceof Polygon polygon && !polygon.isEmpty()) {
        add(rings, polygon, counterClockwise);
      }
    }
    return rings;
  }

  private Polygon rectangle(GeometryFactory factory) {
    return factory.createPolygon(
        new Coordinate[] {
          new Coordinate(left, bottom),
          new Coordinate(right, bottom),
          new Coordinate(right, top),
          new Coordinate(left, top),
          new Coordinate(left, bottom)
        });
  }

  private static void add(List<double[]> rings, Polygon polygon, boolean counterClockwise) {
    rings.add(turned(polygon.getExteriorRing(), counterClockwise));
    for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
      rings.add(turned(polygon.getInteriorRingN(hole), !counterClockwise));
    }
  }

  private static double[] turned(LinearRing ring, boolean counterClockwise) {
    Coordinate[] corners = ring.getCoordinates();
    int count = corners.length - 1;
    double[] turned = new double[2 * count];
    double[] plain = new double[2 * count];
    for (int k = 0; k < count; k++) {
      plain[2 * k] = corners[k].x;
      plain[2 * k + 1] = corners[k].y;
      turned[2 * k] = corners[count - 1 - k].x;
      turned[2 * k + 1] = corners[count - 1 - k].y;
    }
    return twiceArea(plain) > 0 == counterClockwise ? plain : turned;
  }

  /** Twice the area that a ring encloses, positive if it turns counter-clockwise. */
  public static double twiceArea(double[] ring) {
    double sum = 0;
    for (int k = 0; k < ring.length; k += 2) {
      int next = (k + 2) % ring.length;
      sum += ring[k] * ring[next + 1] - ring[next] * ring[k + 1];
    }
    return sum;
  }

  /**
   * The part of a segment inside the window.
   *
   * @return u and v of its two ends; empty if no part is inside
   */
  public double[] clipped(double u0, double v0, double u1, double v1) {
    double[] span = {0, 1};
    boolean inside =
        cut(span, u0 - u1, u0 - left)
            && cut(span, u1 - u0, right - u0)
            && cut(span, v0 - v1, v0 - bottom)
            && cut(span, v1 - v0, top - v0);
    if (!inside || span[0] >= span[1]) {
      return new double[0];
    }
    return new double[] {
      u0 + span[0] * (u1 - u0),
      v0 + span[0] * (v1 - v0),
      u0 + span[1] * (u1 - u0),
      v0 + span[1] * (v1 - v0)
    };
  }

  /** Keeps the part of {@code span} in which {@code rate · t ≤ room}. */
  private static boolean cut(double[] span, double rate, double room) {
    if (rate > 0) {
      span[1] = Math.min(span[1], room / rate);
    } else if (rate < 0) {
      span[0] = Math.max(span[0], room / rate);
    } else {
      return room >= 0;
    }
    return true;
  }
}
