package gable.geom;

/**
 * An axis-parallel box, closed.
 *
 * @param min corner with the smallest coordinates
 * @param max corner with the largest coordinates
 */
public record Box3(Vec3 min, Vec3 max) {

  /** The box that holds nothing: its union with a point is that point. */
  public static final Box3 EMPTY =
      new Box3(
          new Vec3(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY),
          new Vec3(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY));

  /** Smallest box around all points. */
  public static Box3 around(Iterable<Vec3> points) {
    Box3 box = EMPTY;
    for (Vec3 point : points) {
      box = box.with(point);
    }
    return box;
  }

  /** Smallest box that also holds {@code p}. */
  public Box3 with(Vec3 p) {
    return new Box3(
        new Vec3(Math.min(min.x(), p.x()), Math.min(min.y(), p.y()), Math.min(min.z(), p.z())),
        new Vec3(Math.max(max.x(), p.x()), Math.max(max.y(), p.y()), Math.max(max.z(), p.z())));
  }

  /** Smallest box that holds both. */
  public Box3 with(Box3 other) {
    return other.isEmpty() ? this : with(other.min).with(other.max);
  }

  /** The box with every side moved outwards by {@code margin}. */
  public Box3 grown(double margin) {
    Vec3 m = new Vec3(margin, margin, margin);
    return new Box3(min.minus(m), max.plus(m));
  }

  /** True if the box holds no point. */
  public boolean isEmpty() {
    return !(min.x() <= max.x() && min.y() <= max.y() && min.z() <= max.z());
  }

  /** True if the two boxes have a point in common. */
  public boolean meets(Box3 other) {
    return min.x() <= other.max.x()
        && max.x() >= other.min.x()
        && min.y() <= other.max.y()
        && max.y() >= other.min.y()
        && min.z() <= other.max.z()
        && max.z() >= other.min.z();
  }

  /** True if the point lies in the box. */
  public boolean contains(Vec3 p) {
    return p.x() >= min.x()
        && p.x() <= max.x()
        && p.y() >= min.y()
        && p.y() <= max.y()
        && p.z() >= min.z()
        && p.z() <= max.z();
  }

  /** Length of the diagonal; 0 for an empty box. */
  public double diagonal() {
    return isEmpty() ? 0 : max.minus(min).norm();
  }

  /** Largest absolute coordinate; 0 for an empty box. */
  public double reach() {
    if (isEmpty()) {
      return 0;
    }
    double low = Math.max(Math.max(Math.abs(min.x()), Math.abs(min.y())), Math.abs(min.z()));
    double high = Math.max(Math.max(Math.abs(max.x()), Math.abs(max.y())), Math.abs(max.z()));
    return Math.max(low, high);
  }
}
