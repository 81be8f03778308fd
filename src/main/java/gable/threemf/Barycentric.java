package gable.threemf;

import gable.geom.Vec3;

/** Shares of a triangle's corners in the point of it that is nearest to a given one. */
final class Barycentric {

  private Barycentric() {}

  /** Three shares from 0 to 1 with sum 1. */
  static double[] nearest(Vec3 a, Vec3 b, Vec3 c, Vec3 point) {
    Vec3 ab = b.minus(a);
    Vec3 ac = c.minus(a);
    Vec3 normal = ab.cross(ac);
    double area = normal.dot(normal);
    if (area > 0) {
      Vec3 ap = point.minus(a);
      double v = ap.cross(ac).dot(normal) / area;
      double w = ab.cross(ap).dot(normal) / area;
      if (v >= 0 && w >= 0 && v + w <= 1) {
        return new double[] {1 - v - w, v, w};
      }
    }
    return onEdges(new Vec3[] {a, b, c}, point);
  }

  private static double[] onEdges(Vec3[] corners, Vec3 point) {
    double[] best = {1, 0, 0};
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      Vec3 from = corners[k];
      Vec3 along = corners[(k + 1) % 3].minus(from);
      double length = along.dot(along);
      double t = length > 0 ? point.minus(from).dot(along) / length : 0;
      t = Math.max(0, Math.min(1, t));
      double distance = point.distance(from.along(along, t));
      if (distance < least) {
        least = distance;
        best = new double[3];
        best[k] = 1 - t;
        best[(k + 1) % 3] = t;
      }
    }
    return best;
  }
}
