package gable.mesh;

import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Vec3;
import java.util.Optional;

/**
 * An immutable triangle mesh in flat arrays. Facet f has the corners 3f, 3f+1 and 3f+2,
 * counter-clockwise seen from outside; half-edge h runs from corner h to corner {@link #next}(h) of
 * its facet. The frame and unit are the caller's: object units as written, or print space.
 *
 * <p>Nothing is required of the mesh but that the indices exist: whether it is closed is the
 * business of {@link HalfEdges}.
 */
public final class Mesh {

  private final double[] xyz;
  private final int[] corners;

  /** Kept once measured; several threads that measure it at once find the same. */
  private volatile Optional<Box3> box = Optional.empty();

  private Mesh(double[] xyz, int[] corners) {
    this.xyz = xyz;
    this.corners = corners;
  }

  /**
   * A mesh over the given arrays, which it owns from now on (they are not copied, since a mesh of
   * millions of facets should exist once).
   *
   * @param xyz three coordinates for each vertex
   * @param corners three vertex indices for each facet
   * @throws IllegalArgumentException if a length is not a multiple of three or an index does not
   *     exist
   */
  public static Mesh of(double[] xyz, int[] corners) {
    if (xyz.length % 3 != 0 || corners.length % 3 != 0) {
      throw new IllegalArgumentException(
          "not in threes: " + xyz.length + " coordinates, " + corners.length + " corners");
    }
    int vertices = xyz.length / 3;
    for (int corner : corners) {
      if (corner < 0 || corner >= vertices) {
        throw new IllegalArgumentException("vertex " + corner + " of " + vertices);
      }
    }
    return new Mesh(xyz, corners);
  }

  /** Next half-edge of the same facet, counter-clockwise. */
  public static int next(int halfEdge) {
    return halfEdge % 3 == 2 ? halfEdge - 2 : halfEdge + 1;
  }

  /** Previous half-edge of the same facet. */
  public static int previous(int halfEdge) {
    return halfEdge % 3 == 0 ? halfEdge + 2 : halfEdge - 1;
  }

  /** Number of vertices. */
  public int vertexCount() {
    return xyz.length / 3;
  }

  /** Number of facets. */
  public int facetCount() {
    return corners.length / 3;
  }

  /** Vertex at corner {@code k} (0, 1 or 2) of a facet. */
  public int corner(int facet, int k) {
    return corners[3 * facet + k];
  }

  /** Vertex from which a half-edge starts. */
  public int origin(int halfEdge) {
    return corners[halfEdge];
  }

  /** Vertex at which a half-edge ends. */
  public int target(int halfEdge) {
    return corners[next(halfEdge)];
  }

  /** Position of a vertex. */
  public Vec3 point(int vertex) {
    return new Vec3(xyz[3 * vertex], xyz[3 * vertex + 1], xyz[3 * vertex + 2]);
  }

  /** First coordinate of a vertex. */
  public double x(int vertex) {
    return xyz[3 * vertex];
  }

  /** Second coordinate of a vertex. */
  public double y(int vertex) {
    return xyz[3 * vertex + 1];
  }

  /** Third coordinate of a vertex. */
  public double z(int vertex) {
    return xyz[3 * vertex + 2];
  }

  /** Outward normal of a facet, as long as twice its area. */
  public Vec3 facetNormal(int facet) {
    Vec3 a = point(corner(facet, 0));
    return point(corner(facet, 1)).minus(a).cross(point(corner(facet, 2)).minus(a));
  }

  /** Smallest box around a facet. */
  public Box3 facetBox(int facet) {
    return Box3.EMPTY
        .with(point(corner(facet, 0)))
        .with(point(corner(facet, 1)))
        .with(point(corner(facet, 2)));
  }

  /** Smallest box around all vertices. */
  public Box3 box() {
    Box3 known = box.orElseGet(this::measuredBox);
    box = Optional.of(known);
    return known;
  }

  private Box3 measuredBox() {
    double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (int i = 0; i < xyz.length; i += 3) {
      for (int k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], xyz[i + k]);
        high[k] = Math.max(high[k], xyz[i + k]);
      }
    }
    return new Box3(new Vec3(low[0], low[1], low[2]), new Vec3(high[0], high[1], high[2]));
  }

  /**
   * Enclosed volume by the divergence theorem, positive if normals point outwards; meaningful for a
   * closed mesh only. Measured from a vertex of the mesh, so that distance from the origin costs no
   * digits.
   */
  public double volume() {
    if (facetCount() == 0) {
      return 0;
    }
    // in plain numbers: a million facets are summed up before a compiler has taken objects out
    int base = 3 * corners[0];
    double sum = 0;
    for (int k = 0; k < corners.length; k += 3) {
      double ax = xyz[3 * corners[k]] - xyz[base];
      double ay = xyz[3 * corners[k] + 1] - xyz[base + 1];
      double az = xyz[3 * corners[k] + 2] - xyz[base + 2];
      double bx = xyz[3 * corners[k + 1]] - xyz[base];
      double by = xyz[3 * corners[k + 1] + 1] - xyz[base + 1];
      double bz = xyz[3 * corners[k + 1] + 2] - xyz[base + 2];
      double cx = xyz[3 * corners[k + 2]] - xyz[base];
      double cy = xyz[3 * corners[k + 2] + 1] - xyz[base + 1];
      double cz = xyz[3 * corners[k + 2] + 2] - xyz[base + 2];
      sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    }
    return sum / 6;
  }

  /**
   * The mesh under an affine map. If the map mirrors, the second and third corner of every facet
   * change places, so that the outside stays the outside; facet and vertex numbers stay.
   */
  public Mesh mapped(Affine3 map) {
    if (map.equals(Affine3.IDENTITY)) {
      return this;
    }
    double[] moved = new double[xyz.length];
    for (int vertex = 0; vertex < vertexCount(); vertex++) {
      Vec3 p = map.apply(point(vertex));
      moved[3 * vertex] = p.x();
      moved[3 * vertex + 1] = p.y();
      moved[3 * vertex + 2] = p.z();
    }
    int[] turned = corners;
    if (map.determinant() < 0) {
      turned = corners.clone();
      for (int c = 0; c < turned.length; c += 3) {
        int second = turned[c + 1];
        turned[c + 1] = turned[c + 2];
        turned[c + 2] = second;
      }
    }
    return new Mesh(moved, turned);
  }

  /** A copy of all coordinates, three for each vertex. */
  public double[] copyOfPoints() {
    return xyz.clone();
  }

  /** A copy of all corners, three for each facet. */
  public int[] copyOfCorners() {
    return corners.clone();
  }
}
