package gable.feature;

/** Solves small symmetric positive definite systems by Cholesky's method. */
final class NormalEquations {

  private NormalEquations() {}

  /**
   * Solves A x = b.
   *
   * @param packed upper triangle of A by rows, each row followed by its entry of b
   * @param size number of unknowns
   * @return the solution, or an empty array if A is singular to working precision
   */
  static double[] solve(double[] packed, int size) {
    double[][] a = new double[size][size];
    double[] b = new double[size];
    int at = 0;
    for (int i = 0; i < size; i++) {
      for (int j = i; j < size; j++) {
        a[i][j] = packed[at];
        a[j][i] = packed[at++];
      }
      b[i] = packed[at++];
    }
    // rows and columns are scaled to a unit diagonal, so that pivots can be judged without units
    double[] scale = new double[size];
    for (int i = 0; i < size; i++) {
      if (!(a[i][i] > 0)) {
        return new double[0];
      }
      scale[i] = 1 / Math.sqrt(a[i][i]);
    }
    for (int i = 0; i < size; i++) {
      b[i] *= scale[i];
      for (int j = 0; j < size; j++) {
        a[i][j] *= scale[i] * scale[j];
      }
    }
    if (!factor(a, size)) {
      return new double[0];
    }
    substitute(a, b, size);
    for (int i = 0; i < size; i++) {
      b[i] *= scale[i];
    }
    return b;
  }

  /** Replaces the lower triangle by the Cholesky factor. */
  private static boolean factor(double[][] a, int size) {
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = a[i][j];
        for (int k = 0; k < j; k++) {
          sum -= a[i][k] * a[j][k];
        }
        if (i > j) {
          a[i][j] = sum / a[j][j];
        } else if (sum > 1e-14) { // pivots of a unit diagonal: below this only rounding is left
          a[i][i] = Math.sqrt(sum);
        } else {
          return false;
        }
      }
    }
    return true;
  }

  private static void substitute(double[][] a, double[] b, int size) {
    for (int i = 0; i < size; i++) {
      for (int k = 0; k < i; k++) {
        b[i] -= a[i][k] * b[k];
      }
      b[i] /= a[i][i];
    }
    for (int i = size - 1; i >= 0; i--) {
      for (int k = i + 1; k < size; k++) {
        b[i] -= a[k][i] * b[k];
      }
      b[i] /= a[i][i];
    }
  }
}
