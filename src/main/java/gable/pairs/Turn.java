package gable.pairs;

import gable.geom.Affine3;
import gable.geom.Vec3;
import java.util.List;

/**
 * A turn of the plane with a shift after it: never a mirror.
 *
 * @param cosine of the angle
 * @param sine of the angle
 * @param x shift
 * @param y shift
 */
record Turn(double cosine, double sine, double x, double y) {

  /** The turn with the least sum of squares between points and their images (Procrustes). */
  static Turn fitting(List<double[]> from, List<double[]> to) {
    double[] a = mean(from);
    double[] b = mean(to);
    double dot = 0;
    double cross = 0;
    for (int k = 0; k < from.size(); k++) {
      double ax = from.get(k)[0] - a[0];
      double ay = from.get(k)[1] - a[1];
      double bx = to.get(k)[0] - b[0];
      double by = to.get(k)[1] - b[1];
      dot += ax * bx + ay * by;
      cross += ax * by - ay * bx;
    }
    double norm = Math.hypot(dot, cross);
    double c = norm > 0 ? dot / norm : 1;
    double s = norm > 0 ? cross / norm : 0;
    return new Turn(c, s, b[0] - c * a[0] + s * a[1], b[1] - s * a[0] - c * a[1]);
  }

  private static double[] mean(List<double[]> points) {
    double x = 0;
    double y = 0;
    for (double[] point : points) {
      x += point[0];
      y += point[1];
    }
    return new double[] {x / points.size(), y / points.size()};
  }

  /** Distance of the image of a point from another point. */
  double distance(double[] from, double[] to) {
    double ix = cosine * from[0] - sine * from[1] + x;
    double iy = sine * from[0] + cosine * from[1] + y;
    return Math.hypot(ix - to[0], iy - to[1]);
  }

  /** The motion of space that turns plane {@code a} onto plane {@code b} and goes on along it. */
  Affine3 motion(Flat a, Flat b, double along) {
    return Affine3.rows(
        image(a, b, Vec3.X), image(a, b, Vec3.Y), image(a, b, Vec3.Z), b.at(x, y, along));
  }

  private Vec3 image(Flat a, Flat b, Vec3 vector) {
    double[] p = a.of(vector);
    return b.at(cosine * p[0] - sine * p[1], sine * p[0] + cosine * p[1], p[2]);
  }
}
