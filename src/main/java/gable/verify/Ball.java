package gable.verify;

import gable.geom.Vec3;

/**
 * A ball that holds all corners of a polygon, so that a half-space that none of them meets is told
 * by one product.
 *
 * @param centre mean of the corners
 * @param radius distance of the farthest corner, in millimetres; negative if there are none
 */
record Ball(Vec3 centre, double radius) {

  /** Far above the rounding of products and sums of three, far below what matters. */
  private static final double ROUNDING = 1e-9;

  /** The ball around a polygon, three coordinates for each corner. */
  static Ball around(double[] polygon) {
    Vec3 sum = Vec3.ZERO;
    for (int i = 0; i < polygon.length; i += 3) {
      sum = sum.plus(new Vec3(polygon[i], polygon[i + 1], polygon[i + 2]));
    }
    Vec3 centre = polygon.length == 0 ? sum : sum.times(3.0 / polygon.length);
    double radius = -1;
    for (int i = 0; i < polygon.length; i += 3) {
      Vec3 corner = new Vec3(polygon[i], polygon[i + 1], polygon[i + 2]);
      radius = Math.max(radius, corner.distance(centre));
    }
    return new Ball(centre, radius);
  }

  /** True only if normal · p > offset for every corner, also as computed corner by corner. */
  boolean isBeyond(Vec3 normal, double offset) {
    double least = radius + ROUNDING * (radius + centre.norm());
    return normal.dot(centre) - offset > least * normal.norm() + ROUNDING * Math.abs(offset);
  }
}
