package gable.verify;

import gable.geom.Vec3;
import java.util.Arrays;

/**
 * A convex polygon in space that is cut by half-spaces, in two arrays that are used again and
 * again. Coordinates are relative to whatever origin its user has chosen.
 */
final class ConvexClip {

  private double[] points = new double[96];
  private double[] next = new double[96];
  private int count;

  void clear() {
    count = 0;
  }

  void add(double x, double y, double z) {
    if (3 * count + 3 > points.length) {
      points = Arrays.copyOf(points, 2 * points.length);
    }
    points[3 * count] = x;
    points[3 * count + 1] = y;
    points[3 * count + 2] = z;
    count++;
  }

  void load(double[] polygon) {
    clear();
    for (int k = 0; k < polygon.length; k += 3) {
      add(polygon[k], polygon[k + 1], polygon[k + 2]);
    }
  }

  double[] copy() {
    return Arrays.copyOf(points, 3 * count);
  }

  boolean isEmpty() {
    return count < 3;
  }

  /** Keeps the part where nx x + ny y + nz z ≤ offset. */
  void keep(double nx, double ny, double nz, double offset) {
    if (holds(nx, ny, nz, offset)) {
      return; // most half-spaces hold all of it
    }
    if (6 * count + 6 > next.length) {
      next = new double[12 * count + 12];
    }
    int kept = 0;
    for (int k = 0; k < count; k++) {
      int p = 3 * k;
      int q = k + 1 == count ? 0 : p + 3;
      double dp = nx * points[p] + ny * points[p + 1] + nz * points[p + 2] - offset;
      double dq = nx * points[q] + ny * points[q + 1] + nz * points[q + 2] - offset;
      if (dp <= 0) {
        System.arraycopy(points, p, next, 3 * kept++, 3);
      }
      if ((dp < 0 && dq > 0) || (dp > 0 && dq < 0)) {
        double share = dp / (dp - dq);
        for (int i = 0; i < 3; i++) {
          next[3 * kept + i] = points[p + i] + share * (points[q + i] - points[p + i]);
        }
        kept++;
      }
    }
    double[] swap = points;
    points = next;
    next = swap;
    count = kept;
  }

  private boolean holds(double nx, double ny, double nz, double offset) {
    for (int p = 0; p < 3 * count; p += 3) {
      if (!(nx * points[p] + ny * points[p + 1] + nz * points[p + 2] - offset <= 0)) {
        return false;
      }
    }
    return true;
  }

  /** Moves every point along its ray from the origin onto the plane n · p = offset. */
  void projectOnto(Vec3 n, double offset) {
    for (int k = 0; k < 3 * count; k += 3) {
      double along = n.x() * points[k] + n.y() * points[k + 1] + n.z() * points[k + 2];
      double factor = offset / along;
      points[k] *= factor;
      points[k + 1] *= factor;
      points[k + 2] *= factor;
    }
  }

  /** Area, from the sum of the vector areas of a fan; the polygon is flat and convex. */
  double area() {
    double x = 0;
    double y = 0;
    double z = 0;
    for (int k = 2; k < count; k++) {
      double ax = points[3 * k - 3] - points[0];
      double ay = points[3 * k - 2] - points[1];
      double az = points[3 * k - 1] - points[2];
      double bx = points[3 * k] - points[0];
      double by = points[3 * k + 1] - points[1];
      double bz = points[3 * k + 2] - points[2];
      x += ay * bz - az * by;
      y += az * bx - ax * bz;
      z += ax * by - ay * bx;
    }
    return Math.sqrt(x * x + y * y + z * z) / 2;
  }

  /** Length of the boundary. */
  double boundary() {
    double sum = 0;
    for (int k = 0; k < count; k++) {
      int p = 3 * k;
      int q = k + 1 == count ? 0 : p + 3;
      double dx = points[q] - points[p];
      double dy = points[q + 1] - points[p + 1];
      double dz = points[q + 2] - points[p + 2];
      sum += Math.sqrt(dx * dx + dy * dy + dz * dz);
    }
    return sum;
  }

  /** Largest value of nx x + ny y + nz z over the polygon. */
  double most(Vec3 n) {
    double most = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < 3 * count; k += 3) {
      most = Math.max(most, n.x() * points[k] + n.y() * points[k + 1] + n.z() * points[k + 2]);
    }
    return most;
  }

  /** Smallest value of nx x + ny y + nz z over the polygon. */
  double least(Vec3 n) {
    return -most(n.times(-1));
  }
}
