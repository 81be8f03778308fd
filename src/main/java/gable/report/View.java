package gable.report;

import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.Mesh;

/**
 * Where a picture is taken from: a parallel projection from outside and a little above.
 *
 * @param right direction of print space that points right in the picture
 * @param up direction that points up in the picture
 * @param towards direction that points at the viewer
 */
record View(Vec3 right, Vec3 up, Vec3 towards) {

  private static final double ASIDE = Math.toRadians(34);

  /** One flank of a roof at 45 degrees is in sight if the tangent of this is below sin(ASIDE). */
  private static final double ABOVE = Math.toRadians(13);

  /**
   * The view into a bore: a little aside and from above.
   *
   * @param outwards direction along the axis in which the bore is open
   */
  static View into(Vec3 outwards) {
    boolean upright = Math.hypot(outwards.x(), outwards.y()) < 1e-6;
    double azimuth = (upright ? -Math.PI / 2 : Math.atan2(outwards.y(), outwards.x())) + ASIDE;
    Vec3 flat = new Vec3(Math.cos(azimuth), Math.sin(azimuth), 0);
    Vec3 towards = flat.times(Math.cos(ABOVE)).plus(Vec3.Z.times(Math.sin(ABOVE)));
    Vec3 right = Vec3.Z.cross(flat);
    return new View(right, towards.cross(right), towards);
  }

  /** Coordinates in the picture (right, up, towards) of all vertices of a mesh at a place. */
  double[] seen(Mesh mesh, Affine3 place) {
    double[] seen = new double[3 * mesh.vertexCount()];
    for (int vertex = 0; vertex < mesh.vertexCount(); vertex++) {
      Vec3 p = place.apply(mesh.point(vertex));
      seen[3 * vertex] = p.dot(right);
      seen[3 * vertex + 1] = p.dot(up);
      seen[3 * vertex + 2] = p.dot(towards);
    }
    return seen;
  }

  /** Box around coordinates in the picture. */
  static Box3 box(double[] seen) {
    if (seen.length == 0) {
      return Box3.EMPTY;
    }
    double[] low = {seen[0], seen[1], seen[2]};
    double[] high = low.clone();
    for (int at = 3; at < seen.length; at += 3) {
      for (int k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], seen[at + k]);
        high[k] = Math.max(high[k], seen[at + k]);
      }
    }
    return new Box3(new Vec3(low[0], low[1], low[2]), new Vec3(high[0], high[1], high[2]));
  }
}
