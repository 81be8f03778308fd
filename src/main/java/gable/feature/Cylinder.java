package gable.feature;

import gable.geom.Axis;
import gable.geom.Vec3;

/**
 * A circular cylinder with a frame of its own: w along the axis, u and v square to it.
 *
 * @param origin a point on the axis
 * @param u unit vector square to the axis
 * @param v unit vector with u × v = w
 * @param w unit direction of the axis
 * @param radius radius in millimetres, positive
 */
record Cylinder(Vec3 origin, Vec3 u, Vec3 v, Vec3 w, double radius) {

  /** The cylinder about an axis, its u and v chosen freely. */
  static Cylinder about(Vec3 origin, Vec3 direction, double radius) {
    Vec3 u = direction.anySquare();
    return new Cylinder(origin, u, direction.cross(u), direction, radius);
  }

  /**
   * The cylinder about an axis with v as nearly up as the axis allows; for an upright axis v is y.
   */
  static Cylinder upright(Axis axis, double radius) {
    Vec3 w = axis.direction();
    Vec3 up = Vec3.Z.minus(w.times(w.z()));
    // below 1e-6 the direction of "up in the section" is rounding, not geometry
    Vec3 v = up.norm() > 1e-6 ? up.unit() : Vec3.Y.minus(w.times(w.y())).unit();
    return new Cylinder(axis.origin(), v.cross(w), v, w, radius);
  }

  double u(Vec3 point) {
    return point.minus(origin).dot(u);
  }

  double v(Vec3 point) {
    return point.minus(origin).dot(v);
  }

  double w(Vec3 point) {
    return point.minus(origin).dot(w);
  }

  /** Distance of a point from the axis. */
  double distance(Vec3 point) {
    return Math.hypot(u(point), v(point));
  }

  /** Angle of a point about the axis, from u towards v. */
  double angle(Vec3 point) {
    return Math.atan2(v(point), u(point));
  }

  /** The point at section coordinates (u, v, w). */
  Vec3 point(double atU, double atV, double atW) {
    return origin.along(u, atU).along(v, atV).along(w, atW);
  }

  /** The same axis and radius, measured from another point near the axis. */
  Cylinder from(Vec3 near) {
    return new Cylinder(origin.along(w, w(near)), u, v, w, radius);
  }
}
