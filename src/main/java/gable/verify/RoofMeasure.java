package gable.verify;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import java.util.OptionalDouble;

/**
 * How much solid is left straight above the middle of a new ridge: from halfway between the ends of
 * the topmost line of the new faces up to the first facet that faces upwards.
 */
final class RoofMeasure {

  private final WorkMesh before;
  private final MeshEdit edit;
  private final Patch patch;
  private final Vec3 along;
  private final Vec3 up;

  /**
   * A measure across an axis.
   *
   * @param along unit direction of the axis of the feature
   */
  RoofMeasure(WorkMesh before, MeshEdit edit, Patch patch, Vec3 along) {
    this.before = before;
    this.edit = edit;
    this.patch = patch;
    this.along = along;
    Vec3 square = Vec3.Z.minus(along.times(along.z()));
    this.up = square.norm() > 0 ? square.unit() : Vec3.Z;
  }

  /**
   * The height of solid.
   *
   * @param size length of the diagonal of the part
   * @param slack how far vertices of one ridge may differ in height
   * @return the height in millimetres; nothing if no new face hangs or nothing is above
   */
  OptionalDouble left(double size, double slack) {
    double top = Double.NEGATIVE_INFINITY;
    for (int f = patch.firstAdded(); f < patch.firstStaying(); f++) {
      for (int k = 0; k < 3 && hangs(f); k++) {
        top = Math.max(top, up.dot(patch.point(f, k)));
      }
    }
    Vec3 first = Vec3.ZERO;
    Vec3 last = Vec3.ZERO;
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    for (int f = patch.firstAdded(); f < patch.firstStaying(); f++) {
      for (int k = 0; k < 3 && hangs(f); k++) {
        Vec3 p = patch.point(f, k);
        double w = along.dot(p);
        if (up.dot(p) >= top - 2 * slack) {
          first = w < from ? p : first;
          last = w > to ? p : last;
          from = Math.min(from, w);
          to = Math.max(to, w);
        }
      }
    }
    return from < to ? above(first.plus(last).times(0.5), size, slack) : OptionalDouble.empty();
  }

  private boolean hangs(int f) {
    return edit.onNewFace(patch.id(f)) && patch.normal(f).z() < 0;
  }

  private OptionalDouble above(Vec3 start, double size, double slack) {
    double[] nearest = {Double.POSITIVE_INFINITY};
    before.visitAlong(
        start,
        Vec3.Z,
        size,
        facet -> {
          if (!Patch.isRemoved(edit, facet)) {
            Vec3 a = before.point(before.corner(facet, 0));
            Vec3 b = before.point(before.corner(facet, 1));
            Vec3 c = before.point(before.corner(facet, 2));
            nearest[0] = Math.min(nearest[0], height(start, a, b, c, slack));
          }
        });
    for (int f = patch.firstAdded(); f < patch.firstStaying(); f++) {
      double height = height(start, patch.point(f, 0), patch.point(f, 1), patch.point(f, 2), slack);
      nearest[0] = Math.min(nearest[0], height);
    }
    return nearest[0] < Double.POSITIVE_INFINITY
        ? OptionalDouble.of(nearest[0])
        : OptionalDouble.empty();
  }

  /** Height of a facet that faces up over a point; infinite if it is not over it. */
  private static double height(Vec3 p, Vec3 a, Vec3 b, Vec3 c, double slack) {
    if (Sides.turn(a, b, c, 2) <= 0
        || Sides.turn(a, b, p, 2) < 0
        || Sides.turn(b, c, p, 2) < 0
        || Sides.turn(c, a, p, 2) < 0) {
      return Double.POSITIVE_INFINITY;
    }
    Vec3 n = b.minus(a).cross(c.minus(a));
    double height = n.dot(a.minus(p)) / n.z();
    return height > slack ? height : Double.POSITIVE_INFINITY;
  }
}
