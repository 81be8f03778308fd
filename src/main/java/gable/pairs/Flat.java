package gable.pairs;

import gable.geom.Vec3;

/**
 * The plane square to a direction, with two axes that make a right-handed frame with it: a turn of
 * the plane is a turn of space, a mirror of the plane a mirror of space.
 */
final class Flat {

  private final Vec3 u;
  private final Vec3 v;
  private final Vec3 w;

  Flat(Vec3 direction) {
    w = direction.unit();
    u = w.anySquare();
    v = w.cross(u);
  }

  /** Two coordinates in the plane and one along the direction. */
  double[] of(Vec3 point) {
    return new double[] {point.dot(u), point.dot(v), point.dot(w)};
  }

  /** The point or vector with such coordinates. */
  Vec3 at(double x, double y, double z) {
    return u.times(x).plus(v.times(y)).plus(w.times(z));
  }

  Vec3 u() {
    return u;
  }

  Vec3 v() {
    return v;
  }

  Vec3 w() {
    return w;
  }
}
