package gable.reshaper;

import gable.plan.Limits;

/**
 * The web of a horizontal pin and the slot for it, seen square to the plane of the web: x along the
 * axis from the wall that carries the pin towards its tip, y from the axis towards the web, in
 * millimetres. Both halves of a joint know the same numbers, so each can lay out its own without
 * the other.
 *
 * <p>The underside of the web runs from the pin's own underside, a rest before the chamfer of the
 * tip, down to the wall, at the slope limit: it carries the free length before it, and is as high
 * at the wall as that is long where the limit is 45 degrees. The chamfer goes on where it ends.
 *
 * @param radius radius of the pin
 * @param end where the underside meets the pin
 * @param angle between underside and axis, in radians: the slope limit
 * @param half half the thickness
 */
record WebShape(double radius, double end, double angle, double half) {

  /**
   * Length of the underside that may stay free between web and chamfer (half of what prints clean,
   * 0.5: Mazlan, Abdul Kadir, Yusof, Wahab 2020, J. Adv. Ind. Technol. Appl. 1(1):38-47).
   */
  static final double REST = 0.25;

  /** Thickest web, as a share of the diameter: beyond, a pin is its own web (estimate). */
  static final double THICKEST = 0.7;

  /** 0.02 degrees, the error with which an axis may be measured. */
  static final double TILT_SLACK = Math.toRadians(0.02);

  /** Millimetres; sizes are measured to two micrometres. */
  static final double SIZE_SLACK = 0.002;

  /** Share of the clearance that may be missing where a slot or a web is there already. */
  private static final double ROOM_SHARE = 0.1;

  /**
   * By how much sides stand outwards, in the order of trial, in millimetres: a hair, where they
   * would run along an edge; above the merging of points, 1e-4.
   */
  static final double[] NUDGES = {0, 0.0035};

  /**
   * How much smaller a slot may be, or larger a web, that is taken for the one that is wanted, in
   * millimetres: where a web stands on a curved wall, the length of its pin is measured less well
   * than before. Little of the clearance.
   */
  static double slack(double clearance) {
    return Math.max(SIZE_SLACK, ROOM_SHARE * clearance);
  }

  /**
   * The longest web that a pin may have.
   *
   * @param radius radius of the pin
   * @param length its free length
   */
  static WebShape of(double radius, double length, Limits limits) {
    double end = length - TipChamfer.leg(radius, limits.joint()) - REST;
    return new WebShape(radius, end, limits.slope(), limits.joint().webWidth() / 2);
  }

  /**
   * How far a polygon lies inside its circle at most, under something of half a width.
   *
   * @param sides sides of the polygon, at least three
   */
  static double sag(double radius, int sides, double half) {
    double chord = radius - Math.sqrt(Math.max(0, radius * radius - half * half));
    return chord + radius * (1 - Math.cos(Math.PI / Math.max(3, sides)));
  }

  /** The same web, ending elsewhere. */
  WebShape endingAt(double x) {
    return new WebShape(radius, x, angle, half);
  }

  /** The same web at a slightly other angle. */
  WebShape at(double otherAngle) {
    return new WebShape(radius, end, otherAngle, half);
  }

  /** The same with room around it. */
  WebShape grown(double room) {
    // moving the underside outwards moves where it meets the radius along the axis
    return new WebShape(radius, end + room / Math.sin(angle), angle, half + room);
  }

  /** How far from the axis the underside is. */
  double height(double x) {
    return radius + (end - x) * Math.tan(angle);
  }

  /** Where the underside is at a distance from the axis. */
  double under(double y) {
    return end - (y - radius) / Math.tan(angle);
  }
}
