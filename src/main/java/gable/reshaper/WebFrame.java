package gable.reshaper;

import gable.geom.Plane;
import gable.geom.Vec3;

/**
 * The frame of a {@link WebShape} as vectors of print space.
 *
 * @param origin on the axis, where the pin leaves its wall
 * @param along from there towards the tip
 * @param down from the axis towards the web
 * @param side square to both
 */
record WebFrame(Vec3 origin, Vec3 along, Vec3 down, Vec3 side) {

  static WebFrame of(Vec3 origin, Vec3 along, Vec3 down) {
    Vec3 square = down.minus(along.times(down.dot(along))).unit();
    return new WebFrame(origin, along, square, along.cross(square).unit());
  }

  /** The same with the web on the other side. */
  WebFrame turned() {
    return new WebFrame(origin, along, down.times(-1), side.times(-1));
  }

  Vec3 point(double x, double y, double z) {
    return origin.along(along, x).along(down, y).along(side, z);
  }

  /** A direction in the plane of the web. */
  Vec3 direction(double x, double y) {
    return along.times(x).plus(down.times(y)).unit();
  }

  /** The plane square to the web through (x, y) with the normal (nx, ny). */
  Plane plane(double x, double y, double nx, double ny) {
    return Plane.through(point(x, y, 0), direction(nx, ny));
  }

  /** The side of the web at a distance from its middle; negative on the other side. */
  Plane beside(double z) {
    return Plane.through(point(0, 0, z), side.times(Math.signum(z)));
  }

  /** The underside of a web, its normal out of it. */
  Plane underside(WebShape web) {
    return plane(web.end(), web.radius(), Math.sin(web.angle()), Math.cos(web.angle()));
  }
}
