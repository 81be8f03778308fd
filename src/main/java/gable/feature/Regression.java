package gable.feature;

/**
 * Weighted linear regression of one value on a few terms in two walks over the data: the first adds
 * up the normal equations, the second tells how much of the value the terms explain. Nothing is
 * kept for each datum, so that a wall may have any size.
 */
final class Regression {

  private final int terms;
  private final double[] packed;
  private double[] form = {};
  private double weights;
  private double shaped;
  private double rest;
  private double most;

  /** A regression on this many terms. */
  Regression(int terms) {
    this.terms = terms;
    this.packed = new double[terms * (terms + 3) / 2];
  }

  /** First walk: adds a datum, its terms in order and then its value. */
  void add(double[] row, double weight) {
    int at = 0;
    for (int i = 0; i < terms; i++) {
      double weighted = weight * row[i];
      for (int j = i; j <= terms; j++) {
        packed[at++] += weighted * row[j];
      }
    }
    weights += weight;
  }

  /** Solves for the first terms only; false if they depend on each other. */
  boolean solve(int first) {
    double[] part = new double[first * (first + 3) / 2];
    int at = 0;
    int start = 0;
    for (int i = 0; i < first; i++) {
      for (int j = i; j < first; j++) {
        part[at++] = packed[start + j - i];
      }
      part[at++] = packed[start + terms - i];
      start += terms + 1 - i;
    }
    form = NormalEquations.solve(part, first);
    return form.length > 0;
  }

  /** Second walk: splits a datum's value into what the terms explain and the rest. */
  void judge(double[] row, double weight) {
    double value = 0;
    for (int i = 0; i < form.length; i++) {
      value += form[i] * row[i];
    }
    shaped += weight * value * value;
    rest += weight * (row[terms] - value) * (row[terms] - value);
    most = Math.max(most, Math.abs(value));
  }

  /** Mean square of what the terms explain. */
  double shaped() {
    return shaped / weights;
  }

  /** Mean square of the rest. */
  double rest() {
    return rest / weights;
  }

  /** Largest value that the terms explain. */
  double most() {
    return most;
  }
}
