package gable.feature;

import gable.mesh.Mesh;

/**
 * Decides whether a facet may be a piece of a given round wall.
 *
 * <p>A facet belongs if its corners lie on the cylinder within the tolerance or inside it by no
 * more than the sagitta of one facet (points on the chord of a coarse polygon), and if it faces the
 * axis. How far its normal may stray is derived from its shape: a corner that is off by τ tilts a
 * facet of height b by τ/b, and if all three corners lie on the wall, at several angles and
 * heights, they differ by up to the rise c²/8r of the arc over their chord c.
 */
final class WallTest {

  /** A facet wider than this is no piece of a round wall: ten take 36 degrees if they are even. */
  private static final double WIDEST_FACET = Math.toRadians(60);

  /** Uneven facets differ by up to this factor from the typical one; a wider one is a flat. */
  private static final double UNEVEN = 3;

  /** Slack for direction, in radians, where the shape of the facet allows none. */
  private static final double LEAST_TILT = 0.01;

  /** Where shape explains any tilt (slivers), a wall still is not an end face. */
  private static final double MOST_TILT = 0.6;

  private final Surface surface;
  private final Mesh mesh;
  private final Cylinder cylinder;
  private final double tolerance;
  private final double halfWidth;
  private final double nearest;
  private final double farthest;
  private final double onWall;
  private final double widest;
  private final double[] u = new double[3];
  private final double[] v = new double[3];
  private final double[] w = new double[3];

  /**
   * Prepares the test.
   *
   * @param surface the mesh
   * @param cylinder the wall
   * @param tolerance how far corners may be off the cylinder
   * @param width angle in radians that a facet typically spans
   */
  WallTest(Surface surface, Cylinder cylinder, double tolerance, double width) {
    this.surface = surface;
    this.mesh = surface.mesh();
    this.cylinder = cylinder;
    this.tolerance = tolerance;
    this.halfWidth = Math.min(WIDEST_FACET, UNEVEN * width + LEAST_TILT) / 2;
    this.nearest = cylinder.radius() * Math.cos(halfWidth) - tolerance;
    this.farthest = cylinder.radius() + tolerance;
    this.onWall = cylinder.radius() - tolerance;
    this.widest = 2 * (cylinder.radius() * Math.sin(halfWidth) + tolerance);
  }

  boolean accepts(int facet) {
    double ox = cylinder.origin().x();
    double oy = cylinder.origin().y();
    double oz = cylinder.origin().z();
    double innermost = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      int vertex = mesh.corner(facet, k);
      double x = mesh.x(vertex) - ox;
      double y = mesh.y(vertex) - oy;
      double z = mesh.z(vertex) - oz;
      u[k] = x * cylinder.u().x() + y * cylinder.u().y() + z * cylinder.u().z();
      v[k] = x * cylinder.v().x() + y * cylinder.v().y() + z * cylinder.v().z();
      double square = u[k] * u[k] + v[k] * v[k];
      if (square > farthest * farthest || square < nearest * nearest) {
        return false;
      }
      w[k] = x * cylinder.w().x() + y * cylinder.w().y() + z * cylinder.w().z();
      innermost = Math.min(innermost, square);
    }
    return facesAxis(facet, innermost >= onWall * onWall);
  }

  private boolean facesAxis(int facet, boolean inscribed) {
    double chord = 0;
    double longest = 0;
    for (int k = 0; k < 3; k++) {
      int next = k == 2 ? 0 : k + 1;
      double across = square(u[next] - u[k]) + square(v[next] - v[k]);
      chord = Math.max(chord, across);
      longest = Math.max(longest, across + square(w[next] - w[k]));
    }
    double nx = surface.nx(facet);
    double ny = surface.ny(facet);
    double nz = surface.nz(facet);
    if (chord > widest * widest) {
      return false;
    }
    if (surface.isSliver(facet)) {
      return true; // its corners are on the wall, and more it does not tell
    }
    double twiceArea = twiceArea();
    double turned = 2 * tolerance * Math.sqrt(longest) / twiceArea;
    double axial = nx * cylinder.w().x() + ny * cylinder.w().y() + nz * cylinder.w().z();
    double slack = 2 * tolerance + (inscribed ? chord / (8 * cylinder.radius()) : 0);
    // height over the widest chord: in it the slack tilts the facet along the axis
    double height = twiceArea / Math.sqrt(chord);
    if (Math.abs(axial) > Math.min(MOST_TILT, LEAST_TILT + slack / height)) {
      return false;
    }
    double nu = nx * cylinder.u().x() + ny * cylinder.u().y() + nz * cylinder.u().z();
    double nv = nx * cylinder.v().x() + ny * cylinder.v().y() + nz * cylinder.v().z();
    double mu = u[0] + u[1] + u[2];
    double mv = v[0] + v[1] + v[2];
    double inward = -(nu * mu + nv * mv);
    double aside = Math.abs(nu * mv - nv * mu);
    double length = Math.max(w[0], Math.max(w[1], w[2])) - Math.min(w[0], Math.min(w[1], w[2]));
    if (turned > MOST_TILT && length > 10 * tolerance) {
      return true; // a long needle: noise turns it about itself, but it lies along the wall
    }
    double most = halfWidth + Math.min(MOST_TILT, turned);
    return inward > 0 && aside <= Math.tan(most) * inward;
  }

  private double twiceArea() {
    double au = u[1] - u[0];
    double av = v[1] - v[0];
    double aw = w[1] - w[0];
    double bu = u[2] - u[0];
    double bv = v[2] - v[0];
    double bw = w[2] - w[0];
    return Math.sqrt(
        square(av * bw - aw * bv) + square(aw * bu - au * bw) + square(au * bv - av * bu));
  }

  private static double square(double x) {
    return x * x;
  }
}
