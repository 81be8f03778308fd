package gable.feature;

import gable.geom.Vec3;

/**
 * A turn about an axis together with a shift along it.
 *
 * @param origin a point on the axis, in millimetres
 * @param direction unit direction of the axis
 * @param rise shift along the direction for a turn by one radian about it (right-hand rule), in
 *     millimetres; negative for a left-handed motion
 */
record ScrewMotion(Vec3 origin, Vec3 direction, double rise) {

  /** The same axis with another rise. */
  ScrewMotion rising(double other) {
    return new ScrewMotion(origin, direction, other);
  }

  /** Shift along the axis in a full turn, never negative. */
  double lead() {
    return Angles.TURN * Math.abs(rise);
  }

  /** Cosine of the angle between a direction and the way that a point moves; 0 if along a wall. */
  double against(Vec3 point, Vec3 normal) {
    Vec3 way = direction.cross(point.minus(origin)).along(direction, rise);
    double speed = way.norm();
    return speed > 0 ? way.dot(normal) / speed : 0;
  }
}
