package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;

/**
 * Tells noise from form: whether the radial distances of a wall's corners follow a taper, a barrel,
 * an oval or a bend rather than chance. The distances are regressed on w, w², cos 2θ, sin 2θ, w²
 * cos θ and w² sin θ, and on the forms that the cylinder takes up itself.
 */
final class Roundness {

  private static final int ALL = 11;

  /** With corners on two rims only, w² is no more than the constant. */
  private static final int ON_TWO_RIMS = 8;

  /**
   * Both ends of a ruling stray alike where coordinates are rounded, so that corners on two rims
   * tell half as much as their number says. As many must be at either rim: where a wall runs into
   * the first band of a rounding, they are twice as many at that end, a third of all too many.
   */
  private static final int FEWEST_ON_TWO_RIMS = 4 * ON_TWO_RIMS;

  /**
   * Share of half the length beyond which a corner is at a rim: a square one, written to two
   * decimals, of a bore of a millimetre and longer. The first band of a rounding ends nearer to the
   * middle.
   */
  private static final double AT_RIM = 0.99;

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
    if (count < 2 * ON_TWO_RIMS) {
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
    var regression = new Regression(ALL);
    double[] row = new double[ALL + 1];
    int upper = 0;
    int lower = 0;
    for (int k = 0; k < count; k++) {
      fill(row, centred, mesh.point(corners[k]), middle, half);
      regression.add(row, 1);
      upper += row[3] > AT_RIM ? 1 : 0;
      lower += row[3] < -AT_RIM ? 1 : 0;
    }
    boolean onTwoRims = upper + lower == count && 4 * Math.abs(upper - lower) <= count;
    if (onTwoRims && count < FEWEST_ON_TWO_RIMS) {
      return true; // too few as well
    }
    if (count < 2 * ALL || !regression.solve(ALL)) {
      regression.solve(ON_TWO_RIMS);
    }
    for (int k = 0; k < count; k++) {
      fill(row, centred, mesh.point(corners[k]), middle, half);
      regression.judge(row, 1);
    }
    return regression.most() <= negligible
        || regression.shaped() <= CLEARLY * CLEARLY * regression.rest();
  }

  /** Fills in the terms at a corner, its distance from the cylinder last. */
  private static void fill(double[] row, Cylinder c, Vec3 point, double middle, double half) {
    double u = c.u(point);
    double v = c.v(point);
    double d = Math.max(Math.sqrt(u * u + v * v), Double.MIN_NORMAL);
    double cosine = u / d;
    double sine = v / d;
    double w = (c.w(point) - middle) / half;
    row[0] = 1;
    row[1] = cosine;
    row[2] = sine;
    row[3] = w;
    row[4] = w * cosine;
    row[5] = w * sine;
    row[6] = cosine * cosine - sine * sine;
    row[7] = 2 * cosine * sine;
    row[8] = w * w;
    row[9] = w * w * cosine;
    row[10] = w * w * sine;
    row[ALL] = d - c.radius();
  }
}
