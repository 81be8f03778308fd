package gable.verify;

import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.WorkMesh;
import java.util.OptionalInt;

/**
 * How often a closed surface winds round a point, by counting where a ray leaves and enters, with
 * exact signs. A ray that grazes an edge is not counted but replaced by another.
 */
final class Ray {

  /** Directions without a pattern; none is likely to lie in a face of a part. */
  private static final Vec3[] DIRECTIONS = {
    new Vec3(0.2718281, 0.3141592, 0.9097177),
    new Vec3(-0.5772156, 0.6931471, 0.4312084),
    new Vec3(0.6180339, -0.4142135, 0.6683110),
    new Vec3(-0.3247179, -0.8346268, -0.4450418),
  };

  private Ray() {}

  /** The winding number, unless every ray grazes something or the point lies on the surface. */
  static OptionalInt winding(WorkMesh mesh, Box3 box, Vec3 point) {
    double length = 2 * box.with(point).diagonal() + 1;
    for (Vec3 direction : DIRECTIONS) {
      Vec3 far = point.along(direction, length);
      int[] count = new int[2];
      mesh.visitAlong(
          point,
          direction,
          length,
          facet -> {
            Vec3 a = mesh.point(mesh.corner(facet, 0));
            Vec3 b = mesh.point(mesh.corner(facet, 1));
            Vec3 c = mesh.point(mesh.corner(facet, 2));
            int passage = passage(point, far, a, b, c);
            count[0] += passage;
            count[1] += passage == GRAZES ? 1 : 0;
          });
      if (count[1] == 0) {
        return OptionalInt.of(count[0]);
      }
    }
    return OptionalInt.empty();
  }

  private static final int GRAZES = 1 << 20;

  /** 1 if from-to leaves through the facet, −1 if it enters, 0 if it misses it. */
  private static int passage(Vec3 from, Vec3 to, Vec3 a, Vec3 b, Vec3 c) {
    int start = Sides.of(a, b, c, from);
    int end = Sides.of(a, b, c, to);
    if (start * end > 0) {
      return 0;
    }
    int u = Sides.of(from, to, a, b);
    int v = Sides.of(from, to, b, c);
    int w = Sides.of(from, to, c, a);
    if (u * v < 0 || v * w < 0 || u * w < 0) {
      return 0;
    }
    return start == 0 || end == 0 || u == 0 || v == 0 || w == 0 ? GRAZES : end;
  }
}
