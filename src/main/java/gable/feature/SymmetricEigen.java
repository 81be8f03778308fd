package gable.feature;

import gable.geom.Vec3;

/**
 * Eigenvalues and eigenvectors of a symmetric 3 × 3 matrix by cyclic Jacobi rotations (C. G. J.
 * Jacobi 1846; G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. 2013, section 8.5).
 * Exact up to rounding, which matters here because normals of a tessellated wall are coplanar to
 * the last digit.
 */
final class SymmetricEigen {

  private final double[] values = new double[3];
  private final Vec3[] vectors = new Vec3[3];

  /** Decomposes the matrix with rows (xx xy xz), (xy yy yz), (xz yz zz). */
  SymmetricEigen(double xx, double xy, double xz, double yy, double yz, double zz) {
    double[][] a = {{xx, xy, xz}, {xy, yy, yz}, {xz, yz, zz}};
    double[][] v = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    for (int sweep = 0; sweep < 30 && offDiagonal(a) > 0; sweep++) { // converges in under ten
      rotate(a, v, 0, 1);
      rotate(a, v, 0, 2);
      rotate(a, v, 1, 2);
    }
    int[] order = ascending(a[0][0], a[1][1], a[2][2]);
    for (int k = 0; k < 3; k++) {
      int column = order[k];
      values[k] = a[column][column];
      vectors[k] = new Vec3(v[0][column], v[1][column], v[2][column]);
    }
  }

  /** The {@code k}-th eigenvalue, ascending. */
  double value(int k) {
    return values[k];
  }

  /** The unit eigenvector that belongs to {@link #value}. */
  Vec3 vector(int k) {
    return vectors[k].unit();
  }

  private static double offDiagonal(double[][] a) {
    return Math.abs(a[0][1]) + Math.abs(a[0][2]) + Math.abs(a[1][2]);
  }

  private static void rotate(double[][] a, double[][] v, int p, int q) {
    if (a[p][q] == 0) {
      return;
    }
    double theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
    double t = Math.copySign(1 / (Math.abs(theta) + Math.hypot(theta, 1)), theta);
    double c = 1 / Math.hypot(t, 1);
    double s = t * c;
    double apq = a[p][q];
    a[p][p] -= t * apq;
    a[q][q] += t * apq;
    a[p][q] = 0;
    a[q][p] = 0;
    int r = 3 - p - q;
    double arp = a[r][p];
    double arq = a[r][q];
    a[r][p] = c * arp - s * arq;
    a[p][r] = a[r][p];
    a[r][q] = s * arp + c * arq;
    a[q][r] = a[r][q];
    for (double[] row : v) {
      double vp = row[p];
      double vq = row[q];
      row[p] = c * vp - s * vq;
      row[q] = s * vp + c * vq;
    }
  }

  private static int[] ascending(double a, double b, double c) {
    double[] d = {a, b, c};
    int[] order = {0, 1, 2};
    for (int pass = 0; pass < 2; pass++) {
      for (int k = 0; k < 2; k++) {
        if (d[order[k]] > d[order[k + 1]]) {
          int held = order[k];
          order[k] = order[k + 1];
          order[k + 1] = held;
        }
      }
    }
    return order;
  }
}
