package gable.verify;

import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * The patch as a consumer holds it that reads coordinates in single precision: in object space,
 * every coordinate rounded to the nearest float.
 *
 * <p>If no two facets cross before rounding, none cross afterwards by more than twice the length by
 * which rounding moves a corner: disjoint facets, or facets that meet in a corner or an edge, can
 * be parted by a plane, which rounding moves none of their points across by more than that length.
 * So crossings in single precision are grazes between facets that come closer than rounding, and
 * what has to be looked for are corners that fall together, facets that lose their area or turn
 * over, and such grazes.
 */
final class SinglePrecision {

  /** Doubles next to each other within which the way to print space and back may stray. */
  private static final int STRAY = 64;

  private final Affine3 toObject;
  private final List<Vec3> rounded = new ArrayList<>();

  /**
   * The rounded patch.
   *
   * @param toObject print space to object space
   * @param step what the way to object space cannot tell apart, see {@link #step}
   */
  SinglePrecision(Patch patch, Affine3 toObject, double step) {
    this.toObject = toObject;
    for (int v = 0; v < patch.vertexCount(); v++) {
      rounded.add(round(written(toObject.apply(patch.point(v)), step)));
    }
  }

  /**
   * Length in object space up to which a coordinate that went to print space and back may differ
   * from what is written in the file: a power of two, so that whole multiples are exact. Without it
   * a written zero comes back as some 1e-15, which single precision keeps: two corners that fall
   * together for every reader would look apart.
   *
   * @param box box around the object in print space
   */
  static double step(Box3 box, Affine3 toObject) {
    double reach = 0;
    for (Vec3 corner : new Vec3[] {box.min(), box.max()}) {
      reach = Math.max(reach, termsOf(corner, toObject));
    }
    return Math.scalb(1.0, Math.getExponent(reach) - 52) * STRAY;
  }

  /** Largest sum of the terms that make up a coordinate in object space. */
  private static double termsOf(Vec3 p, Affine3 m) {
    double x = Math.abs(p.x());
    double y = Math.abs(p.y());
    double z = Math.abs(p.z());
    return Math.max(
        sum(x * m.m00(), y * m.m10(), z * m.m20(), m.m30()),
        Math.max(
            sum(x * m.m01(), y * m.m11(), z * m.m21(), m.m31()),
            sum(x * m.m02(), y * m.m12(), z * m.m22(), m.m32())));
  }

  private static double sum(double a, double b, double c, double d) {
    return Math.abs(a) + Math.abs(b) + Math.abs(c) + Math.abs(d);
  }

  private static Vec3 written(Vec3 p, double step) {
    return new Vec3(
        Math.rint(p.x() / step) * step,
        Math.rint(p.y() / step) * step,
        Math.rint(p.z() / step) * step);
  }

  static Vec3 round(Vec3 p) {
    return new Vec3((float) p.x(), (float) p.y(), (float) p.z());
  }

  Vec3 point(int vertex) {
    return rounded.get(vertex);
  }

  /** Normal of the rounded facet. */
  Vec3 normal(int a, int b, int c) {
    Vec3 from = point(a);
    return point(b).minus(from).cross(point(c).minus(from));
  }

  /** Normal of the facet in object space before rounding, computed in the same way. */
  Vec3 exactNormal(Vec3 a, Vec3 b, Vec3 c) {
    Vec3 from = toObject.apply(a);
    return toObject.apply(b).minus(from).cross(toObject.apply(c).minus(from));
  }
}
