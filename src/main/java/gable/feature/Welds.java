package gable.feature;

import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.Arrays;

/**
 * Sees through needles: facets of which two corners are one point but for rounding. Booleans of
 * other programs leave them in rows along the edges of a wall. Here the two corners count as one
 * vertex, and the facets on either side of the needle as neighbours.
 */
final class Welds {

  private final Mesh mesh;
  private final HalfEdges halfEdges;
  private final double distance;

  /** For each vertex one with a smaller number or itself; empty as long as there is no needle. */
  private int[] parents = new int[0];

  /**
   * Finds all needles.
   *
   * @param distance corners closer than this are one point
   */
  Welds(Mesh mesh, HalfEdges halfEdges, double distance) {
    this.mesh = mesh;
    this.halfEdges = halfEdges;
    this.distance = distance;
    for (int h = 0; h < 3 * mesh.facetCount(); h++) {
      if (isShort(h)) {
        join(mesh.origin(h), mesh.target(h));
      }
    }
  }

  private boolean isShort(int halfEdge) {
    int a = mesh.origin(halfEdge);
    int b = mesh.target(halfEdge);
    double x = mesh.x(b) - mesh.x(a);
    double y = mesh.y(b) - mesh.y(a);
    double z = mesh.z(b) - mesh.z(a);
    return x * x + y * y + z * z <= distance * distance;
  }

  private void join(int a, int b) {
    if (parents.length == 0) {
      parents = new int[mesh.vertexCount()];
      Arrays.setAll(parents, vertex -> vertex);
    }
    int one = vertex(a);
    int other = vertex(b);
    parents[Math.max(one, other)] = Math.min(one, other);
  }

  /** The vertex that stands for all that are the same point. */
  int vertex(int vertex) {
    if (parents.length == 0) {
      return vertex;
    }
    int at = vertex;
    while (parents[at] != at) {
      at = parents[at];
    }
    return at;
  }

  /** The half-edge on the other side of a half-edge, needles skipped; −1 where there is none. */
  int opposite(int halfEdge) {
    int other = halfEdges.opposite(halfEdge);
    for (int hop = 0; other >= 0 && parents.length > 0 && hop < 64; hop++) {
      int exit = exit(other);
      if (exit < 0) {
        return other;
      }
      other = halfEdges.opposite(exit);
    }
    return other;
  }

  /** The long half-edge through which a needle is left; −1 if the facet is no needle. */
  private int exit(int entry) {
    int second = Mesh.next(entry);
    int third = Mesh.next(second);
    boolean shortSecond = vertex(mesh.origin(second)) == vertex(mesh.target(second));
    boolean shortThird = vertex(mesh.origin(third)) == vertex(mesh.target(third));
    if (shortSecond == shortThird) {
      return -1;
    }
    return shortSecond ? third : second;
  }
}
