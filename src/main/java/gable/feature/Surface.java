package gable.feature;

import gable.mesh.HalfEdges;
import gable.mesh.Mesh;

/**
 * A mesh with what finding asks of it again and again: unit normals, and how sharply facets meet.
 * Normals are kept in single precision: they decide which facets belong together (by fractions of a
 * degree), while every measure is taken from the points.
 */
final class Surface {

  private final Mesh mesh;
  private final HalfEdges halfEdges;
  private final float[] normals;

  Surface(Mesh mesh, HalfEdges halfEdges) {
    this.mesh = mesh;
    this.halfEdges = halfEdges;
    this.normals = new float[3 * mesh.facetCount()];
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      fill(facet);
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
    if (norm > 0) { // a degenerate facet keeps a zero normal: it says nothing
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

  int opposite(int halfEdge) {
    return halfEdges.opposite(halfEdge);
  }

  /** Facet on the other side of a half-edge, or −1 where the mesh is open. */
  int across(int halfEdge) {
    int opposite = halfEdges.opposite(halfEdge);
    return opposite < 0 ? -1 : opposite / 3;
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
   * Angle in radians by which the surface turns at a half-edge: positive where it is concave (the
   * void is narrower than half a turn), negative where it is convex, 0 at an open edge.
   */
  double turn(int halfEdge) {
    int other = across(halfEdge);
    if (other < 0) {
      return 0;
    }
    int facet = halfEdge / 3;
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
    int from = mesh.origin(halfEdge);
    int to = mesh.target(halfEdge);
    double along =
        cx * (mesh.x(to) - mesh.x(from))
            + cy * (mesh.y(to) - mesh.y(from))
            + cz * (mesh.z(to) - mesh.z(from));
    return along > 0 ? -angle : angle;
  }
}
