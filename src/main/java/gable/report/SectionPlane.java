package gable.report;

import gable.feature.Feature;
import gable.geom.Vec3;

/**
 * The plane square to the axis of a feature, midway between its ends, with the directions of its
 * section frame: v is the part of +z square to the axis, u = v × w.
 *
 * @param u to the right in drawings
 * @param v upwards in drawings
 * @param w along the axis, towards the viewer
 * @param offset of the plane along w
 */
record SectionPlane(Vec3 u, Vec3 v, Vec3 w, double offset) {

  private static final double UPRIGHT = 1e-6;
  private static final double SAME = 1e-9;

  static SectionPlane of(Feature feature) {
    Vec3 w = feature.axis().direction();
    Vec3 rest = Vec3.Z.minus(w.times(w.z()));
    Vec3 v = rest.norm() < UPRIGHT ? Vec3.Y : rest.unit();
    return new SectionPlane(v.cross(w), v, w, feature.axis().origin().dot(w));
  }

  /** Whether another plane is this one but for rounding, so that one slice serves both. */
  boolean isSame(SectionPlane other) {
    return Math.abs(offset - other.offset) < SAME * (1 + Math.abs(offset))
        && w.minus(other.w).norm() < SAME;
  }
}
