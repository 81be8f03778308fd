package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;

/**
 * Tells noise from form: whether the radial distances of a wall's corners follow a taper, a barrel,
 * an oval or a bend rather than chance. The distances are regressed on w, w², cos 2θ, sin 2θ, w²
 * cos θ and w² sin θ (the forms next to those that the cylinder itself takes up).
 */
final class Roundness {

  private static final int ALL = 7;

  /** With corners on two rims only, w² is no more than the constant. */
  private static final int ON_TWO_RIMS = 4;

  /** Form counts if it is this many times what remains without it. */
  private static final double CLEARLY = 2;

  private Roundness() {}

  /**
   * True if the corners lie on a cylinder but for noise.
   *
   * @param negligible form of a smaller amplitude than this, in millimetres, does not matter
   */
  static boolean isCylinder(
      Mesh mesh, int[] corners, int count, Cylinder cylinder, double negligible) {
    if (count < 3 * ON_TWO_RIMS) {
      return true; // too few to tell; the tolerance on distances has been kept
    }
    Cylinder centred = cylinder.from(mesh.point(corners[0]));
    double low = 0;
    double high = 0;
    for (int k = 0; k < count; k++) {
      double w = centred.w(mesh.point(corners[k]));
      low = Math.min(low, w);
      high = Math.max(high, w);
    }
    double half = Math.max((high - low) / 2, Double.MIN_NORMAL);
    double middle = (high + low) / 2;
    double[][] rows = new double[count][];
    for (int k = 0; k < count; k++) {
      rows[k] = row(centred, mesh.point(corners[k]), middle, half);
    }
    double[] form = count < 3 * ALL ? new double[0] : solve(rows, ALL);
    if (form.length == 0) {
      form = solve(rows, ON_TWO_RIMS);
    }
    double shaped = 0;
    double rest = 0;
    double most = 0;
    for (double[] row : rows) {
      double value = 0;
      for (int i = 0; i < form.length; i++) {
        value += form[i] * row[i];
      }
      shaped += value * value;
      rest += (row[ALL] - value) * (row[ALL] - value);
      most = Math.max(most, Math.abs(value));
    }
    return most <= negligible || shaped <= CLEARLY * CLEARLY * rest;
  }

  /** Regression on the first terms of each row; empty if they are not independent. */
  private static double[] solve(double[][] rows, int terms) {
    double[] packed = new double[terms * (terms + 3) / 2];
    for (double[] row : rows) {
      int at = 0;
      for (int i = 0; i < terms; i++) {
        for (int j = i; j < terms; j++) {
          packed[at++] += row[i] * row[j];
        }
        packed[at++] += row[i] * row[ALL];
      }
    }
    return NormalEquations.solve(packed, terms);
  }

  /** The terms at a corner, its distance from the cylinder last. */
  private static double[] row(Cylinder c, Vec3 point, double middle, double half) {
    double angle = c.angle(point);
    double w = (c.w(point) - middle) / half;
    return new double[] {
      1,
      w,
      Math.cos(2 * angle),
      Math.sin(2 * angle),
      w * w,
      w * w * Math.cos(angle),
      w * w * Math.sin(angle),
      c.distance(point) - c.radius()
    };
  }
}
