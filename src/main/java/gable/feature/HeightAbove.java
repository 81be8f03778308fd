package gable.feature;

import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.WorkMesh;
import java.util.ArrayList;
import java.util.List;

/**
 * Least height above a flat convex patch of everything that faces upwards. Both are flat, so the
 * least is found at a corner of the overlap: each facet is clipped to the upright prism over the
 * patch and measured at the corners of what is left.
 */
final class HeightAbove {

  /**
   * Sine of the lean below which a facet of a millimetre or more is upright. Derived: corners that
   * stray by 10 micrometres lean a facet of one millimetre by 0.02. What a face of this lean hides
   * is a strip beside it that is 0.02 times as wide as the material is high: under 1.2 mm it is
   * 0.024 mm, far less than a line.
   */
  private static final double UPRIGHT = 0.02;

  /** A facet this many times as long as high is a needle. */
  private static final double SLENDER = 20;

  /**
   * The same for needles, of which the same noise leans one of height b by 0.02 mm / b: no more
   * than this, so that a face that leans by 15 degrees counts however it was cut into facets.
   */
  private static final double MOST_UPRIGHT = 0.25;

  private final List<Vec3> patch;
  private final Vec3 normal;
  private final Vec3 base;
  private final List<Vec3> inward = new ArrayList<>();
  private double least = Double.POSITIVE_INFINITY;

  HeightAbove(List<Vec3> patch) {
    this.patch = List.copyOf(patch);
    Vec3 first = patch.get(0);
    Vec3 sum = Vec3.ZERO;
    for (int k = 2; k < patch.size(); k++) {
      sum = sum.plus(patch.get(k - 1).minus(first).cross(patch.get(k).minus(first)));
    }
    if (!(Math.abs(sum.z()) > 0)) {
      throw new IllegalArgumentException("a patch that stands upright: " + patch);
    }
    this.normal = sum.times(1 / sum.z());
    this.base = first;
    double turn = Math.signum(turn());
    for (int k = 0; k < patch.size(); k++) {
      Vec3 along = patch.get((k + 1) % patch.size()).minus(patch.get(k));
      inward.add(new Vec3(-along.y(), along.x(), 0).times(turn));
    }
  }

  double over(WorkMesh mesh, double top) {
    Box3 box = Box3.around(patch);
    Vec3 high = new Vec3(box.max().x(), box.max().y(), Math.max(top, box.max().z()));
    double foot = normal.dot(base);
    mesh.visitBelow(
        new Box3(box.min(), high), normal, () -> least + foot, facet -> measure(mesh, facet));
    return least;
  }

  private void measure(WorkMesh mesh, int facet) {
    Vec3 a = mesh.point(mesh.corner(facet, 0));
    Vec3 b = mesh.point(mesh.corner(facet, 1));
    Vec3 c = mesh.point(mesh.corner(facet, 2));
    if (!(Math.min(height(a), Math.min(height(b), height(c))) < least) || !facesUp(a, b, c)) {
      return;
    }
    List<Vec3> polygon = List.of(a, b, c);
    for (int k = 0; k < patch.size() && !polygon.isEmpty(); k++) {
      polygon = kept(polygon, inward.get(k), inward.get(k).dot(patch.get(k)));
    }
    polygon = kept(polygon, normal, normal.dot(base));
    for (Vec3 p : polygon) {
      least = Math.min(least, height(p));
    }
  }

  private static boolean facesUp(Vec3 a, Vec3 b, Vec3 c) {
    Vec3 up = b.minus(a).cross(c.minus(a));
    double area = up.norm();
    if (!(up.z() > UPRIGHT * area)) {
      return false;
    }
    double longest = Math.max(a.distance(b), Math.max(b.distance(c), c.distance(a)));
    double height = area / longest;
    return longest < SLENDER * height || up.z() > Math.min(MOST_UPRIGHT, UPRIGHT / height) * area;
  }

  /** Sign of the turn of the patch seen from above. */
  private double turn() {
    double sum = 0;
    for (int k = 2; k < patch.size(); k++) {
      Vec3 a = patch.get(k - 1).minus(base);
      Vec3 b = patch.get(k).minus(base);
      sum += a.x() * b.y() - a.y() * b.x();
    }
    return sum;
  }

  private double height(Vec3 p) {
    return normal.dot(p.minus(base));
  }

  /** The part of a polygon with n · p ≥ bound. */
  private static List<Vec3> kept(List<Vec3> polygon, Vec3 n, double bound) {
    List<Vec3> kept = new ArrayList<>();
    for (int k = 0; k < polygon.size(); k++) {
      Vec3 p = polygon.get(k);
      Vec3 q = polygon.get((k + 1) % polygon.size());
      double sp = n.dot(p) - bound;
      double sq = n.dot(q) - bound;
      if (sp >= 0) {
        kept.add(p);
      }
      if ((sp > 0 && sq < 0) || (sp < 0 && sq > 0)) {
        kept.add(p.along(q.minus(p), sp / (sp - sq)));
      }
    }
    return kept;
  }
}
