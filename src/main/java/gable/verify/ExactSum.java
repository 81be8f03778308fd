package gable.verify;

import java.util.Arrays;

/**
 * An exact sum of doubles and of products of them, as a sum of parts that do not overlap, smallest
 * first (J. R. Shewchuk, Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric
 * Predicates, Discrete &amp; Computational Geometry 18, 1997: two-sum, two-product, growing an
 * expansion, leaving zeros out).
 *
 * <p>Exact as long as nothing underflows, which {@link #safe} tells of a factor.
 */
final class ExactSum {

  /** Three such factors, each with a rounding error 2^-53 of it, stay above the least double. */
  private static final double LEAST_FACTOR = 1e-80;

  private static final double GREATEST_FACTOR = 1e80;

  private double[] parts = new double[32];
  private int count;

  /** True if products of three such factors neither underflow nor overflow. */
  static boolean safe(double factor) {
    double size = Math.abs(factor);
    return size == 0 || (size > LEAST_FACTOR && size < GREATEST_FACTOR);
  }

  /** The part of a − b that is lost in rounding. */
  static double lost(double a, double b) {
    double difference = a - b;
    double virtual = a - difference;
    double rest = difference + virtual;
    return (a - rest) + (virtual - b);
  }

  void add(double term) {
    double carry = term;
    int kept = 0;
    for (int k = 0; k < count; k++) {
      double part = parts[k];
      double sum = carry + part;
      double virtual = sum - carry;
      double error = (carry - (sum - virtual)) + (part - virtual);
      if (error != 0) {
        parts[kept++] = error;
      }
      carry = sum;
    }
    if (carry != 0) {
      if (kept == parts.length) {
        parts = Arrays.copyOf(parts, 2 * kept);
      }
      parts[kept++] = carry;
    }
    count = kept;
  }

  void addProduct(double a, double b) {
    double product = a * b;
    if (product != 0) {
      add(Math.fma(a, b, -product));
      add(product);
    }
  }

  void addProduct(double a, double b, double c) {
    double product = a * b;
    if (product != 0 && c != 0) {
      addProduct(Math.fma(a, b, -product), c);
      addProduct(product, c);
    }
  }

  /** Sign of the sum: that of its largest part. */
  int sign() {
    return count == 0 ? 0 : (int) Math.signum(parts[count - 1]);
  }
}
