package gable.geom;

/**
 * An oriented plane: the points p with normal · p = offset. The side to which the normal points is
 * its outside.
 *
 * @param normal unit normal
 * @param offset distance of the plane from the origin along the normal
 */
public record Plane(Vec3 normal, double offset) {

  /** Refuses a normal that is not of length one within rounding. */
  public Plane {
    if (!(Math.abs(normal.norm() - 1) < 1e-9) || !Double.isFinite(offset)) {
      throw new IllegalArgumentException("no plane: normal " + normal + ", offset " + offset);
    }
  }

  /** The plane through {@code point} with the given unit normal. */
  public static Plane through(Vec3 point, Vec3 normal) {
    return new Plane(normal, normal.dot(point));
  }

  /** Signed distance of a point: positive outside. */
  public double signedDistance(Vec3 point) {
    return normal.dot(point) - offset;
  }

  /** The same plane seen from its other side. */
  public Plane flipped() {
    return new Plane(normal.times(-1), -offset);
  }

  /** The plane moved outwards. */
  public Plane moved(double distance) {
    return new Plane(normal, offset + distance);
  }
}
