package gable.section;

import java.util.List;

/**
 * Section of a peaked roof over the section of a bore: two flanks that climb at the in-section
 * angle α from the contacts on the bore's own outline and meet in a ridge, or end at a flat top
 * between them.
 *
 * <p>Section frame: u sideways, v the upward direction square to the axis, millimetres. A flank
 * that climbs at α has the outward normal (∓sin α, cos α); its contact is the corner of the outline
 * that lies farthest along that normal, so the whole outline is under the roof: material is only
 * removed, and whatever passed through the bore still does.
 *
 * @param left contact of the flank at smaller u
 * @param right contact of the flank at larger u
 * @param angle in-section angle α in radians, within (0, π/2)
 * @param bridge width of the flat top; 0 for a full peak
 */
public record RoofProfile(Point left, Point right, double angle, double bridge) {

  /**
   * A point of the section.
   *
   * @param u sideways
   * @param v upwards
   */
  public record Point(double u, double v) {}

  /** Refuses what is no roof. */
  public RoofProfile {
    if (!(angle > 0 && angle < Math.PI / 2 && bridge >= 0 && left.u < right.u)) {
      throw new IllegalArgumentException(
          "no roof: contacts "
              + left
              + " and "
              + right
              + ", angle "
              + angle
              + ", bridge "
              + bridge);
    }
  }

  /**
   * The full peak over an outline.
   *
   * @param outline corners of the outline, any order
   * @param angle in-section angle in radians
   * @param tie corners nearer to the farthest than this, in millimetres, count as equally far; of
   *     them the highest is the contact, so that a facet in the plane of a flank stays
   */
  public static RoofProfile over(List<Point> outline, double angle, double tie) {
    return new RoofProfile(
        contact(outline, -Math.sin(angle), Math.cos(angle), tie),
        contact(outline, Math.sin(angle), Math.cos(angle), tie),
        angle,
        0);
  }

  private static Point contact(List<Point> outline, double nu, double nv, double tie) {
    double farthest = Double.NEGATIVE_INFINITY;
    for (Point p : outline) {
      farthest = Math.max(farthest, p.u * nu + p.v * nv);
    }
    Point contact = new Point(Double.NaN, Double.NEGATIVE_INFINITY);
    for (Point p : outline) {
      if (p.u * nu + p.v * nv >= farthest - tie && p.v > contact.v) {
        contact = p;
      }
    }
    return contact;
  }

  /** The same roof moved outwards, away from the outline, by {@code distance}. */
  public RoofProfile moved(double distance) {
    double du = Math.sin(angle) * distance;
    double dv = Math.cos(angle) * distance;
    return new RoofProfile(
        new Point(left.u - du, left.v + dv), new Point(right.u + du, right.v + dv), angle, bridge);
  }

  /** The same roof with a flat top of the given width, which lowers it. */
  public RoofProfile withBridge(double width) {
    return new RoofProfile(left, right, angle, width);
  }

  /** Where the flanks meet, or would meet. */
  public Point ridge() {
    // left.v + t sin = right.v + s sin with t cos + s cos = right.u - left.u
    double run = right.u - left.u;
    double rise = right.v - left.v;
    double slope = Math.tan(angle);
    double u = left.u + (run + rise / slope) / 2;
    return new Point(u, left.v + (u - left.u) * slope);
  }

  /** Height of the top: of the ridge, or of the flat. */
  public double top() {
    return ridge().v - bridge / 2 * Math.tan(angle);
  }

  /** Corners of the roof from the left contact over the top to the right one. */
  public List<Point> corners() {
    Point ridge = ridge();
    return bridge == 0
        ? List.of(left, ridge, right)
        : List.of(
            left,
            new Point(ridge.u - bridge / 2, top()),
            new Point(ridge.u + bridge / 2, top()),
            right);
  }

  /** Widest flat top that stays above {@code height}. */
  public double widestBridge(double height) {
    return Math.max(0, 2 * (ridge().v - height) / Math.tan(angle));
  }
}
