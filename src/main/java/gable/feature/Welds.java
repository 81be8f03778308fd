package gable.feature;

import gable.mesh.HalfEdges;
import gable.mesh.Mesh;

/**
 * Sees through needles: facets of which two corners are one point but for rounding or noise.
 * Booleans of other programs leave them in rows along the edges of a wall. Here the two corners
 * count as one vertex, and the facets on either side of the needle as neighbours.
 *
 * <p>Rounding is known from the coordinates, so corners that near are one. Noise is not known: it
 * may be as large as {@code noise}, which is wider than the facets of a small or a fine wall.
 * Corners are taken for one only where all that hang together by edges so short lie within the
 * noise; the corners of a fine wall or face hang together over much more.
 */
final class Welds {

  private final Mesh mesh;
  private final HalfEdges halfEdges;

  /** Corners that are one point but for rounding. */
  private final VertexSets same;

  /** Corners that are one point but for noise, those among them. */
  private final VertexSets near;

  /**
   * Finds all needles.
   *
   * @param rounding corners closer than this are one point
   * @param noise corners farther apart than this are never one point
   */
  Welds(Mesh mesh, HalfEdges halfEdges, double rounding, double noise) {
    this.mesh = mesh;
    this.halfEdges = halfEdges;
    this.same = new VertexSets(mesh);
    var linked = new VertexSets(mesh);
    double most = Math.max(rounding, noise);
    for (int h = 0; h < 3 * mesh.facetCount(); h++) {
      double square = square(h);
      if (square <= most * most) {
        linked.join(mesh.origin(h), mesh.target(h));
        if (square <= rounding * rounding) {
          same.join(mesh.origin(h), mesh.target(h));
        }
      }
    }
    same.settle();
    linked.settle();
    this.near = linked.isEmpty() ? same : linked.within(most, same);
  }

  private double square(int halfEdge) {
    int a = mesh.origin(halfEdge);
    int b = mesh.target(halfEdge);
    double x = mesh.x(b) - mesh.x(a);
    double y = mesh.y(b) - mesh.y(a);
    double z = mesh.z(b) - mesh.z(a);
    return x * x + y * y + z * z;
  }

  /** The vertex that stands for all that are the same point. */
  int vertex(int vertex) {
    return same.first(vertex);
  }

  /** The vertex that stands for all that are the same point but for noise. */
  int near(int vertex) {
    return near.first(vertex);
  }

  /** True if two corners of a facet are the same point but for noise. */
  boolean isNeedle(int facet) {
    if (near.isEmpty()) {
      return false;
    }
    int a = near(mesh.corner(facet, 0));
    int b = near(mesh.corner(facet, 1));
    int c = near(mesh.corner(facet, 2));
    return a == b || b == c || c == a;
  }

  /** The half-edge on the other side of a half-edge, needles skipped; −1 where there is none. */
  int opposite(int halfEdge) {
    int other = halfEdges.opposite(halfEdge);
    for (int hop = 0; other >= 0 && !near.isEmpty() && hop < 64; hop++) {
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
    boolean shortSecond = near(mesh.origin(second)) == near(mesh.target(second));
    boolean shortThird = near(mesh.origin(third)) == near(mesh.target(third));
    if (shortSecond == shortThird) {
      return -1;
    }
    return shortSecond ? third : second;
  }
}
