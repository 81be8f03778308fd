package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.Optional;

/**
 * The screw motion that moves a surface along itself, if there is one: by least squares of n · (c̄
 * + c × x) over points x with normals n of the surface, weighted by area, with |c| = 1 (H. Pottmann
 * and J. Wallner, Computational Line Geometry, 2001, on linear complexes of normals; from memory).
 * c̄ is eliminated, which leaves the eigenvectors of a symmetric 3 × 3 matrix. One walk over the
 * facets.
 *
 * <p>There is none to tell where all normals are square to one direction: a cylinder may be shifted
 * freely.
 */
final class ScrewFit {

  /** Least share of the normals along the direction that they have least of: 2 degrees, squared. */
  private static final double LEAST_ALONG = 1e-3;

  private final Surface surface;
  private final Vec3 centre;
  private final double[] normal = new double[6];
  private final double[] moment = new double[6];
  private final double[][] mixed = new double[3][3];
  private double weight;

  /**
   * An empty sum.
   *
   * @param centre a point near the surface, about which moments are taken
   */
  ScrewFit(Surface surface, Vec3 centre) {
    this.surface = surface;
    this.centre = centre;
  }

  /** The middle of a facet. */
  static Vec3 middle(Mesh mesh, int facet) {
    return mesh.point(mesh.corner(facet, 0))
        .plus(mesh.point(mesh.corner(facet, 1)))
        .plus(mesh.point(mesh.corner(facet, 2)))
        .times(1.0 / 3);
  }

  void add(int facet) {
    Vec3 n = new Vec3(surface.nx(facet), surface.ny(facet), surface.nz(facet));
    Vec3 m = middle(surface.mesh(), facet).minus(centre).cross(n);
    double area = surface.twiceArea(facet);
    int at = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        mixed[i][j] += area * m.get(i) * n.get(j);
        if (j >= i) {
          normal[at] += area * n.get(i) * n.get(j);
          moment[at++] += area * m.get(i) * m.get(j);
        }
      }
    }
    weight += area;
  }

  /** The motion that fits best. */
  Optional<ScrewMotion> motion() {
    var normals =
        new SymmetricEigen(normal[0], normal[1], normal[2], normal[3], normal[4], normal[5]);
    if (!(normals.value(0) > LEAST_ALONG * weight)) {
      return Optional.empty();
    }
    double[] s = moment.clone();
    for (int k = 0; k < 3; k++) {
      Vec3 row = times(normals.vector(k));
      int at = 0;
      for (int i = 0; i < 3; i++) {
        for (int j = i; j < 3; j++) {
          s[at++] -= row.get(i) * row.get(j) / normals.value(k);
        }
      }
    }
    Vec3 turn = new SymmetricEigen(s[0], s[1], s[2], s[3], s[4], s[5]).vector(0);
    Vec3 shift = Vec3.ZERO;
    for (int k = 0; k < 3; k++) {
      Vec3 axis = normals.vector(k);
      shift = shift.along(axis, -times(axis).dot(turn) / normals.value(k));
    }
    Vec3 origin = centre.plus(turn.cross(shift));
    return Optional.of(new ScrewMotion(origin, turn, turn.dot(shift)));
  }

  /** The mixed moments times a direction of the normals. */
  private Vec3 times(Vec3 n) {
    return new Vec3(row(0).dot(n), row(1).dot(n), row(2).dot(n));
  }

  private Vec3 row(int i) {
    return new Vec3(mixed[i][0], mixed[i][1], mixed[i][2]);
  }
}
