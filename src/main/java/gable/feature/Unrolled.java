package gable.feature;

import gable.mesh.Mesh;

/**
 * Facets of a hole, unrolled about an axis: angle, place along the axis and radius of points that
 * stand for equal parts of each facet. Between the corners of a facet all three are taken as
 * linear, so that a facet from ruling to ruling does not sag towards the axis. A facet that crosses
 * much of a turn's lead has sixteen such points, a small one has its middle.
 */
final class Unrolled {

  /** Takes the points. */
  @FunctionalInterface
  interface Visitor {

    /**
     * One point.
     *
     * @param angle about the axis, in radians, perhaps beyond a turn
     * @param w along the axis
     * @param radius from the axis
     * @param weight twice the area that it stands for
     */
    void visit(double angle, double w, double radius, double weight);
  }

  private static final int MOST_STEPS = 4;

  /** Four steps for each of eight starts, and no number that a profile is drawn with. */
  private static final double FINE = 31.7;

  private final Surface surface;
  private final Mesh mesh;
  private final IndexSet facets;
  private final Cylinder frame;
  private final double[] angle = new double[3];
  private final double[] w = new double[3];
  private final double[] radius = new double[3];

  Unrolled(Surface surface, IndexSet facets, Cylinder frame) {
    this.surface = surface;
    this.mesh = surface.mesh();
    this.facets = facets;
    this.frame = frame;
  }

  int size() {
    return facets.size();
  }

  /** Measures the corners of a facet; the second and third angle are near the first. */
  void measure(int facet) {
    for (int c = 0; c < 3; c++) {
      int v = mesh.corner(facet, c);
      double x = mesh.x(v) - frame.origin().x();
      double y = mesh.y(v) - frame.origin().y();
      double z = mesh.z(v) - frame.origin().z();
      double pu = x * frame.u().x() + y * frame.u().y() + z * frame.u().z();
      double pv = x * frame.v().x() + y * frame.v().y() + z * frame.v().z();
      double a = Math.atan2(pv, pu);
      angle[c] = c == 0 ? a : a - Angles.TURN * Math.rint((a - angle[0]) / Angles.TURN);
      w[c] = x * frame.w().x() + y * frame.w().y() + z * frame.w().z();
      radius[c] = Math.sqrt(pu * pu + pv * pv);
    }
  }

  int facet(int k) {
    return facets.get(k);
  }

  double angle(int c) {
    return angle[c];
  }

  double w(int c) {
    return w[c];
  }

  double radius(int c) {
    return radius[c];
  }

  /**
   * Shows all points.
   *
   * @param rise that of the motion, which tells how much of its lead a facet crosses
   */
  void forEach(double rise, Visitor visitor) {
    double fine = Angles.TURN * Math.abs(rise) / FINE;
    for (int k = 0; k < facets.size(); k++) {
      measure(facets.get(k));
      double a = w[0] - rise * angle[0];
      double b = w[1] - rise * angle[1];
      double c = w[2] - rise * angle[2];
      double span = Math.max(a, Math.max(b, c)) - Math.min(a, Math.min(b, c));
      int steps = (int) Math.min(MOST_STEPS, 1 + Math.floor(span / fine));
      points(steps, surface.twiceArea(facets.get(k)) / (steps * steps), visitor);
    }
  }

  /** The middles of the steps² equal triangles that a facet is cut into. */
  private void points(int steps, double weight, Visitor visitor) {
    double third = 1.0 / (3 * steps);
    for (int i = 0; i < steps; i++) {
      for (int j = 0; i + j < steps; j++) {
        point((3 * i + 1) * third, (3 * j + 1) * third, weight, visitor);
        if (i + j + 1 < steps) {
          point((3 * i + 2) * third, (3 * j + 2) * third, weight, visitor);
        }
      }
    }
  }

  private void point(double s, double t, double weight, Visitor visitor) {
    double q = 1 - s - t;
    visitor.visit(
        q * angle[0] + s * angle[1] + t * angle[2],
        q * w[0] + s * w[1] + t * w[2],
        q * radius[0] + s * radius[1] + t * radius[2],
        weight);
  }
}
