package gable.feature;

import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.Arrays;

/**
 * A mesh with what finding asks of it again and again: unit normals, and how sharply facets meet.
 * Slivers have no normal, and tell nothing. Normals are kept in single precision: they decide which
 * facets belong together (by fractions of a degree), while every measure is taken from the points.
 */
final class Surface {

  private final Mesh mesh;
  private final HalfEdges halfEdges;
  private final float[] normals;
  private final float[] areas;
  private final double leastHeight;
  private final Welds welds;

  /**
   * Prepares a mesh.
   *
   * @param leastHeight a facet that is less high than this, in millimetres, has no normal: rounding
   *     of its corners turns it anywhere
   * @param noise how far noise may move corners apart that are one point, in millimetres
   */
  Surface(Mesh mesh, HalfEdges halfEdges, double leastHeight, double noise) {
    this.mesh = mesh;
    this.halfEdges = halfEdges;
    this.leastHeight = leastHeight;
    this.normals = new float[3 * mesh.facetCount()];
    this.areas = new float[mesh.facetCount()];
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      fill(facet);
    }
    this.welds = Welds.of(mesh, halfEdges, leastHeight, noise, normals);
    for (int facet = 0; facet < mesh.facetCount() && !welds.isEmpty(); facet++) {
      if (welds.isNeedle(facet)) {
        Arrays.fill(normals, 3 * facet, 3 * facet + 3, 0);
      }
    }
  }

  private void fill(int facet) {
    int a = mesh.corner(facet, 0);
    int b = mesh.corner(facet, 1);
    int c = mesh.corner(facet, 2);
    double px = mesh.x(b) - mesh.x(a);
    double py = mesh.y(b) - mesh.y(a);
    double pz = mesh.z(b) - mesh.z(a);
    double qx = mesh.x(c) - mesh.x(a);
    double qy = mesh.y(c) - mesh.y(a);
    double qz = mesh.z(c) - mesh.z(a);
    double nx = py * qz - pz * qy;
    double ny = pz * qx - px * qz;
    double nz = px * qy - py * qx;
    double norm = Math.sqrt(nx * nx + ny * ny + nz * nz);
    areas[facet] = (float) norm;
    double rx = qx - px;
    double ry = qy - py;
    double rz = qz - pz;
    double longest =
        Math.max(
            px * px + py * py + pz * pz,
            Math.max(qx * qx + qy * qy + qz * qz, rx * rx + ry * ry + rz * rz));
    if (norm > leastHeight * Math.sqrt(longest)) {
      normals[3 * facet] = (float) (nx / norm);
      normals[3 * facet + 1] = (float) (ny / norm);
      normals[3 * facet + 2] = (float) (nz / norm);
    }
  }

  Mesh mesh() {
    return mesh;
  }

  int facetCount() {
    return mesh.facetCount();
  }

  /** True if the facet is too thin to have a direction. */
  boolean isSliver(int facet) {
    return normals[3 * facet] == 0 && normals[3 * facet + 1] == 0 && normals[3 * facet + 2] == 0;
  }

  /** True if the facet is less high than a length, and many times as long. */
  boolean isNeedle(int facet, double height, double slender) {
    double longest =
        Math.max(length(3 * facet), Math.max(length(3 * facet + 1), length(3 * facet + 2)));
    double own = areas[facet] / longest;
    return own < height && longest > slender * own;
  }

  int opposite(int halfEdge) {
    return halfEdges.opposite(halfEdge);
  }

  /** The vertex that stands for all that are the same point but for rounding. */
  int welded(int vertex) {
    return welds.vertex(vertex);
  }

  /** The vertex that stands for all that are the same point but for rounding and noise. */
  int near(int vertex) {
    return welds.near(vertex);
  }

  /** Like {@link #across}, but looks through needles. */
  int beyond(int halfEdge) {
    int opposite = welds.opposite(halfEdge);
    return opposite < 0 ? -1 : opposite / 3;
  }

  /** Like {@link #opposite}, but looks through needles. */
  int opposedBeyond(int halfEdge) {
    return welds.opposite(halfEdge);
  }

  /** Facet on the other side of a half-edge, or −1 where the mesh is open. */
  int across(int halfEdge) {
    int opposite = halfEdges.opposite(halfEdge);
    return opposite < 0 ? -1 : opposite / 3;
  }

  /** Twice the area of a facet, the length of its normal. */
  float twiceArea(int facet) {
    return areas[facet];
  }

  float nx(int facet) {
    return normals[3 * facet];
  }

  float ny(int facet) {
    return normals[3 * facet + 1];
  }

  float nz(int facet) {
    return normals[3 * facet + 2];
  }

  /** Length of a half-edge. */
  double length(int halfEdge) {
    int a = mesh.origin(halfEdge);
    int b = mesh.target(halfEdge);
    double x = mesh.x(b) - mesh.x(a);
    double y = mesh.y(b) - mesh.y(a);
    double z = mesh.z(b) - mesh.z(a);
    return Math.sqrt(x * x + y * y + z * z);
  }

  /**
   * Angle in radians by which the surface turns from one facet to another that follows it: positive
   * where it is concave (the void is narrower than half a turn), negative where it is convex, 0 if
   * one of them is a sliver.
   */
  double turn(int facet, int other) {
    double ax = nx(facet);
    double ay = ny(facet);
    double az = nz(facet);
    double bx = nx(other);
    double by = ny(other);
    double bz = nz(other);
    double cx = ay * bz - az * by;
    double cy = az * bx - ax * bz;
    double cz = ax * by - ay * bx;
    double sine = Math.sqrt(cx * cx + cy * cy + cz * cz);
    double angle = Math.atan2(sine, ax * bx + ay * by + az * bz);
    return rise(facet, other) >= 0 ? angle : -angle;
  }

  /** Height of a facet's middle above another's, along the other's normal, times three. */
  private double rise(int facet, int other) {
    double rise = 0;
    for (int k = 0; k < 3; k++) {
      int a = mesh.corner(facet, k);
      int b = mesh.corner(other, k);
      rise +=
          nx(facet) * (mesh.x(b) - mesh.x(a))
              + ny(facet) * (mesh.y(b) - mesh.y(a))
              + nz(facet) * (mesh.z(b) - mesh.z(a));
    }
    return rise;
  }

  /** Cosine of the angle between the normals of two facets. */
  double cosine(int facet, int other) {
    return (double) nx(facet) * nx(other)
        + (double) ny(facet) * ny(other)
        + (double) nz(facet) * nz(other);
  }

  /** True if the surface is convex from one facet to another that follows it. */
  boolean isConvex(int facet, int other) {
    return rise(facet, other) < 0;
  }

  /**
   * Sine of the angle by which the surface turns at a half-edge towards another facet, times the
   * length of the half-edge: positive where it is concave. Cheap, for adding up.
   */
  double bend(int halfEdge, int other) {
    int facet = halfEdge / 3;
    double ax = nx(facet);
    double ay = ny(facet);
    double az = nz(facet);
    double bx = nx(other);
    double by = ny(other);
    double bz = nz(other);
    int from = mesh.origin(halfEdge);
    int to = mesh.target(halfEdge);
    return (az * by - ay * bz) * (mesh.x(to) - mesh.x(from))
        + (ax * bz - az * bx) * (mesh.y(to) - mesh.y(from))
        + (ay * bx - ax * by) * (mesh.z(to) - mesh.z(from));
  }

  /** Angle in radians by which the surface turns at a half-edge, needles skipped; see above. */
  double turn(int halfEdge) {
    int other = beyond(halfEdge);
    return other < 0 ? 0 : turn(halfEdge / 3, other);
  }

  /**
   * Cosine of the angle between two bends, each given by two facets; 1 if one of them is no bend.
   */
  double alignment(int facet, int other, int facet2, int other2) {
    double[] a = crossed(facet, other);
    double[] b = crossed(facet2, other2);
    double dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    double squares =
        (a[0] * a[0] + a[1] * a[1] + a[2] * a[2]) * (b[0] * b[0] + b[1] * b[1] + b[2] * b[2]);
    return squares > 0 ? Math.abs(dot) / Math.sqrt(squares) : 1;
  }

  /** Cross product of two unit normals: along the bend, as long as the sine of its angle. */
  private double[] crossed(int facet, int other) {
    double ax = nx(facet);
    double ay = ny(facet);
    double az = nz(facet);
    double bx = nx(other);
    double by = ny(other);
    double bz = nz(other);
    return new double[] {ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx};
  }
}
