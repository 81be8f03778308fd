package gable.threemf;

import gable.geom.Affine3;
import gable.geom.Vec3;

/**
 * The grid on which new vertices are written: decimals of the part's unit.
 *
 * <p>The step, as it shows on the plate after the object's placement, is at most 1e-6 mm (with 0.2
 * % slack, so that a turn whose numbers were rounded is still a turn): far below what any printer
 * resolves, and below the step of single precision (1.5e-5 mm at 200 mm), so the grid adds nothing
 * to what single-precision readers lose anyway. More digits would only pretend (core specification
 * 1.4, section 4.1.3.1).
 *
 * <p>A snapped coordinate is n / 10^decimals with a whole n below 2^50, correctly rounded, which is
 * what a reader gets from the decimal digits of n (both are exact in binary, one division).
 *
 * @param decimals digits after the decimal point, 0 to 15
 */
public record VertexGrid(int decimals) {

  private static final double STEP = 1e-6;
  private static final double SLACK = 1e-3;
  private static final double LARGEST = 0x1p50;
  private static final int MOST = 15;

  private static final double[] POWERS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
  };

  public VertexGrid {
    if (decimals < 0 || decimals > MOST) {
      throw new IllegalArgumentException("no grid with " + decimals + " decimals");
    }
  }

  /**
   * The grid for an object.
   *
   * @param toPrint where the object goes, from object units to millimetres
   * @param reach largest absolute coordinate of the object, in object units
   */
  public static VertexGrid of(Affine3 toPrint, double reach) {
    double wanted = Math.ceil(Math.log10(largestScale(toPrint) / STEP) - SLACK);
    int decimals = (int) Math.max(0, Math.min(MOST, wanted));
    while (decimals > 0 && 2 * reach * POWERS[decimals] > LARGEST) {
      decimals--;
    }
    return new VertexGrid(decimals);
  }

  /**
   * The largest factor by which a map stretches a length: the root of the largest eigenvalue of the
   * product of its linear part with its transpose, by the trigonometric solution of the cubic.
   */
  static double largestScale(Affine3 map) {
    Vec3 a = map.applyVector(Vec3.X);
    Vec3 b = map.applyVector(Vec3.Y);
    Vec3 c = map.applyVector(Vec3.Z);
    double mean = (a.dot(a) + b.dot(b) + c.dot(c)) / 3;
    Vec3 diagonal = new Vec3(a.dot(a) - mean, b.dot(b) - mean, c.dot(c) - mean);
    double ab = a.dot(b);
    double bc = b.dot(c);
    double ca = c.dot(a);
    double spread = Math.sqrt((diagonal.dot(diagonal) + 2 * (ab * ab + bc * bc + ca * ca)) / 6);
    if (spread <= mean * 1e-15) {
      return Math.sqrt(mean);
    }
    double half =
        (diagonal.x() * (diagonal.y() * diagonal.z() - bc * bc)
                - ab * (ab * diagonal.z() - bc * ca)
                + ca * (ab * bc - diagonal.y() * ca))
            / (2 * spread * spread * spread);
    double angle = Math.acos(Math.max(-1, Math.min(1, half))) / 3;
    return Math.sqrt(mean + 2 * spread * Math.cos(angle));
  }

  /** The point of the grid next to a point in object units: what a reader of the text gets. */
  public Vec3 snap(Vec3 point) {
    return new Vec3(snap(point.x()), snap(point.y()), snap(point.z()));
  }

  /** The same for one coordinate. */
  public double snap(double coordinate) {
    return whole(coordinate) / POWERS[decimals];
  }

  private long whole(double coordinate) {
    double scaled = coordinate * POWERS[decimals];
    if (!(Math.abs(scaled) < 2 * LARGEST)) {
      throw new IllegalArgumentException(
          "coordinate " + coordinate + " is too large for " + decimals + " decimals");
    }
    return Math.round(scaled);
  }

  /** The digits of a coordinate, without needless zeros. */
  String text(double coordinate) {
    long whole = whole(coordinate);
    long power = (long) POWERS[decimals];
    String sign = whole < 0 ? "-" : "";
    long size = Math.abs(whole);
    long fraction = size % power;
    if (fraction == 0) {
      return sign + size / power;
    }
    StringBuilder digits = new StringBuilder(Long.toString(power + fraction));
    while (digits.charAt(digits.length() - 1) == '0') {
      digits.setLength(digits.length() - 1);
    }
    return sign + size / power + '.' + digits.substring(1);
  }
}
