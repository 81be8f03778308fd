package gable.verify;

import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.WorkMesh;
import java.util.OptionalInt;

/**
 * How often a closed surface winds round a point, by counting where a ray leaves and enters, with
 * exact signs. The ray goes out by the nearest side of the box, a little aslant, so that it passes
 * few facets and lies in no likely face. A ray that grazes an edge is not counted but replaced by
 * another.
 */
final class Ray {

  /** How far aslant, per length: without a pattern that a drawing could have. */
  private static final double[] SLANTS = {0.0271828, 0.0141421, 0.0577215, 0.0314159};

  private Ray() {}

  /** The winding number, unless every ray grazes something or the point lies on the surface. */
  static OptionalInt winding(WorkMesh mesh, Box3 box, Vec3 point) {
    Box3 around = box.with(point);
    for (int attempt = 0; attempt < SLANTS.length; attempt++) {
      Vec3 far = point.plus(shortest(around, point, attempt));
      int[] count = new int[2];
      mesh.visitAlong(
          point,
          far.minus(point),
          1,
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

  /** The way out of a box by its nearest side, and as far again as a hundredth of its size. */
  private static Vec3 shortest(Box3 box, Vec3 point, int attempt) {
    double least = Double.POSITIVE_INFINITY;
    double outwards = 1;
    int axis = 0;
    for (int k = 0; k < 3; k++) {
      double up = box.max().get(k) - point.get(k);
      double down = point.get(k) - box.min().get(k);
      if (Math.min(up, down) < least) {
        least = Math.min(up, down);
        axis = k;
        outwards = up <= down ? 1 : -1;
      }
    }
    double length = least + 0.01 * box.diagonal() + 1;
    double[] step = new double[3];
    step[axis] = outwards * length;
    step[(axis + 1) % 3] = SLANTS[attempt] * length;
    step[(axis + 2) % 3] = -SLANTS[(attempt + 1) % SLANTS.length] * length;
    return new Vec3(step[0], step[1], step[2]);
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
