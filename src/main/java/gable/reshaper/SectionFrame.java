package gable.reshaper;

import gable.feature.Bore;
import gable.geom.Plane;
import gable.geom.Vec3;

/**
 * The section frame of a bore (see {@link gable.feature.WallSection}) as vectors of print space.
 *
 * @param origin on the axis
 * @param u sideways
 * @param v upwards, square to the axis
 * @param w along the axis
 */
record SectionFrame(Vec3 origin, Vec3 u, Vec3 v, Vec3 w) {

  static SectionFrame of(Bore bore) {
    Vec3 w = bore.axis().direction();
    Vec3 v = Vec3.Z.minus(w.times(w.z())).unit();
    return new SectionFrame(bore.axis().origin(), v.cross(w), v, w);
  }

  Vec3 point(double pu, double pv, double pw) {
    return origin.along(u, pu).along(v, pv).along(w, pw);
  }

  double wOf(Vec3 point) {
    return point.minus(origin).dot(w);
  }

  /** The plane parallel to the axis through (pu, pv) with the section normal (nu, nv). */
  Plane plane(double pu, double pv, double nu, double nv) {
    return Plane.through(point(pu, pv, 0), u.times(nu).plus(v.times(nv)).unit());
  }

  /** The plane square to the axis at {@code pw}, facing along {@code sign} times w. */
  Plane square(double pw, int sign) {
    return Plane.through(point(0, 0, pw), w.times(sign));
  }
}
