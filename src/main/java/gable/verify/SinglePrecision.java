package gable.verify;

import gable.geom.Affine3;
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

  private final Affine3 toObject;
  private final List<Vec3> rounded = new ArrayList<>();

  SinglePrecision(Patch patch, Affine3 toObject) {
    this.toObject = toObject;
    for (int v = 0; v < patch.vertexCount(); v++) {
      rounded.add(round(toObject.apply(patch.point(v))));
    }
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
