package gable.geom;

/**
 * A directed straight line.
 *
 * @param origin a point on it
 * @param direction its unit direction
 */
public record Axis(Vec3 origin, Vec3 direction) {

  /** Refuses a direction that is not of length one within rounding. */
  public Axis {
    if (!(Math.abs(direction.norm() - 1) < 1e-9)) { // a few hundred ulps: the sum of one unit()
      throw new IllegalArgumentException("direction of an axis is not a unit vector: " + direction);
    }
  }

  /** Position of the foot of {@code point}, measured from the origin along the direction. */
  public double parameter(Vec3 point) {
    return point.minus(origin).dot(direction);
  }

  /** The point at {@code parameter}. */
  public Vec3 at(double parameter) {
    return origin.along(direction, parameter);
  }

  /** Distance of a point from the line. */
  public double distance(Vec3 point) {
    return point.minus(origin).cross(direction).norm();
  }

  /** Angle between the axis and the horizontal plane of print space, in radians, 0 to π/2. */
  public double tilt() {
    return Math.asin(Math.min(1, Math.abs(direction.z())));
  }
}
