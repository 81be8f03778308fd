package gable.reshaper;

import gable.feature.Bore;
import gable.feature.Surroundings;
import gable.geom.Box3;
import gable.geom.Plane;
import gable.geom.Vec3;
import java.util.List;

/** The outline in which a plane cuts a bore as it is now, roof included. */
final class BoreOutline {

  private BoreOutline() {}

  /** The convex outline of the bore in a plane, sides once each; empty if there is none. */
  static List<Vec3> in(Plane plane, Bore bore, Surroundings around) {
    Vec3 w = bore.axis().direction();
    Vec3 origin = bore.axis().origin();
    Vec3 centre = origin.along(w, -plane.signedDistance(origin) / plane.normal().dot(w));
    double reach = 4 * bore.radius() / Math.abs(plane.normal().dot(w));
    Box3 near = Box3.EMPTY.with(centre).grown(reach);
    for (List<Vec3> loop : around.outlines(plane, near)) {
      List<Vec3> sides = Outlines.withoutStraight(loop);
      if (surrounds(sides, centre, plane.normal())) {
        return sides;
      }
    }
    return List.of();
  }

  /** The part of the way from the axis to a point that is square to the axis. */
  static Vec3 sideways(Vec3 point, Bore bore) {
    Vec3 w = bore.axis().direction();
    Vec3 from = point.minus(bore.axis().origin());
    return from.minus(w.times(from.dot(w)));
  }

  /** True if a loop is a hole around a point and turns to the same side everywhere. */
  private static boolean surrounds(List<Vec3> loop, Vec3 centre, Vec3 normal) {
    for (int k = 0; k < loop.size(); k++) {
      Vec3 a = loop.get(k);
      Vec3 b = loop.get((k + 1) % loop.size());
      Vec3 c = loop.get((k + 2) % loop.size());
      double turn = b.minus(a).cross(c.minus(b)).dot(normal);
      double around = a.minus(centre).cross(b.minus(centre)).dot(normal);
      if (around <= 0 || turn <= 0) {
        return false;
      }
    }
    return true;
  }
}
