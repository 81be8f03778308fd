package gable.geom;

/**
 * A point or a direction in three dimensions. Which frame and unit it is in is said where it is
 * used; in print space it is millimetres with z up.
 *
 * @param x first coordinate
 * @param y second coordinate
 * @param z third coordinate
 */
public record Vec3(double x, double y, double z) {

  /** The origin, or the vector of length zero. */
  public static final Vec3 ZERO = new Vec3(0, 0, 0);

  /** Unit vector along x. */
  public static final Vec3 X = new Vec3(1, 0, 0);

  /** Unit vector along y. */
  public static final Vec3 Y = new Vec3(0, 1, 0);

  /** Unit vector along z, which is up in print space. */
  public static final Vec3 Z = new Vec3(0, 0, 1);

  /** Sum. */
  public Vec3 plus(Vec3 other) {
    return new Vec3(x + other.x, y + other.y, z + other.z);
  }

  /** Difference. */
  public Vec3 minus(Vec3 other) {
    return new Vec3(x - other.x, y - other.y, z - other.z);
  }

  /** Multiple. */
  public Vec3 times(double factor) {
    return new Vec3(x * factor, y * factor, z * factor);
  }

  /** This point moved by {@code distance} times {@code direction}. */
  public Vec3 along(Vec3 direction, double distance) {
    return new Vec3(
        x + distance * direction.x, y + distance * direction.y, z + distance * direction.z);
  }

  /** Scalar product. */
  public double dot(Vec3 other) {
    return x * other.x + y * other.y + z * other.z;
  }

  /** Vector product. */
  public Vec3 cross(Vec3 other) {
    return new Vec3(
        y * other.z - z * other.y, z * other.x - x * other.z, x * other.y - y * other.x);
  }

  /** Length. */
  public double norm() {
    return Math.sqrt(dot(this));
  }

  /** Distance between two points. */
  public double distance(Vec3 other) {
    return minus(other).norm();
  }

  /**
   * Vector of length one in the same direction.
   *
   * @throws IllegalArgumentException if the length is zero or not finite
   */
  public Vec3 unit() {
    double length = norm();
    if (!(length > 0 && length < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("no direction: " + this);
    }
    return new Vec3(x / length, y / length, z / length);
  }

  /** A unit vector square to this one; the same for the same input. */
  public Vec3 anySquare() {
    double ax = Math.abs(x);
    double ay = Math.abs(y);
    double az = Math.abs(z);
    Vec3 least = ax <= ay && ax <= az ? X : ay <= az ? Y : Z;
    return cross(least).unit();
  }

  /** Coordinate 0, 1 or 2. */
  public double get(int index) {
    return index == 0 ? x : index == 1 ? y : z;
  }
}
