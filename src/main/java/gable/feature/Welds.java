package gable.feature;

import gable.mesh.HalfEdges;
import gable.mesh.Mesh;

/**
 * Sees through needles: facets of which two corners are one point but for rounding or noise.
 * Booleans of other programs leave them in rows along the edges of a wall. Here the two corners
 * count as one vertex, and the facets on either side of the needle as neighbours.
 */
final class Welds {

  private static final int MOST_HOPS = 64;

  private final Mesh mesh;
  private final HalfEdges halfEdges;

  /** Corners that are one point but for rounding. */
  private final VertexSets same;

  /** Corners that are one point but for noise, those among them. */
  private final VertexSets near;

  private Welds(Mesh mesh, HalfEdges halfEdges, VertexSets same, VertexSets near) {
    this.mesh = mesh;
    this.halfEdges = halfEdges;
    this.same = same;
    this.near = near;
  }

  /**
   * Finds all needles.
   *
   * @param rounding corners closer than this are one point
   * @param noise corners farther apart than this are never one point
   * @param normals unit normals of the facets, by which needles are told that noise has turned
   */
  static Welds of(Mesh mesh, HalfEdges halfEdges, double rounding, double noise, float[] normals) {
    var same = new VertexSets(mesh);
    var linked = new VertexSets(mesh);
    double most = Math.max(rounding, noise);
    for (int h = 0; h < 3 * mesh.facetCount(); h++) {
      double square = square(mesh, h);
      if (square <= most * most) {
        linked.join(mesh.origin(h), mesh.target(h));
        if (square <= rounding * rounding) {
          same.join(mesh.origin(h), mesh.target(h));
        }
      }
    }
    same.settle();
    linked.settle();
    if (linked.isEmpty() || noise <= rounding) {
      return new Welds(mesh, halfEdges, same, same);
    }
    var may = new Welds(mesh, halfEdges, same, linked.within(most, same));
    return new Welds(mesh, halfEdges, same, may.strays(normals));
  }

  /**
   * Corners of needles that noise has turned: there the surface is smooth from the facet on one
   * side to that on the other, but not over the needle. A needle that lies in a wall, as at curved
   * mouths, or in a face or a ledge beside it is none, however short its side.
   */
  private VertexSets strays(float[] normals) {
    var sets = new VertexSets(mesh);
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      for (int h = 3 * facet; h < 3 * facet + 3; h++) {
        int a = mesh.origin(h);
        int b = mesh.target(h);
        if (same.first(a) != a) {
          sets.join(a, same.first(a));
        }
        if (near(a) == near(b) && isStray(h, normals)) {
          sets.join(a, b);
        }
      }
    }
    sets.settle();
    return sets;
  }

  /** The short side of a facet is given. */
  private boolean isStray(int shortSide, float[] normals) {
    int facet = shortSide / 3;
    int second = Mesh.next(shortSide);
    int one = besideFan(second, mesh.target(second));
    int other = besideFan(Mesh.next(second), mesh.target(second));
    if (one < 0 || other < 0) {
      return false;
    }
    return isSmooth(one, other, normals)
        && !(isSmooth(one, facet, normals) && isSmooth(facet, other, normals));
  }

  /**
   * The facet beyond a side of a needle and of others with the same tip; −1 if a needle with
   * another tip comes first: it goes on along a narrow ledge, which is there and no noise.
   */
  private int besideFan(int side, int tip) {
    int entry = halfEdges.opposite(side);
    for (int hop = 0; entry >= 0 && hop < MOST_HOPS; hop++) {
      boolean towards = mesh.target(entry) == tip;
      int second = Mesh.next(entry);
      int third = Mesh.next(second);
      int base = towards ? third : second;
      if (near(mesh.origin(base)) != near(mesh.target(base))) {
        return isNeedle(entry / 3) ? -1 : entry / 3;
      }
      entry = halfEdges.opposite(towards ? second : third);
    }
    return -1;
  }

  /** By the angle alone: over a needle nobody can tell whether the surface is convex. */
  private static boolean isSmooth(int a, int b, float[] n) {
    return n[3 * a] * n[3 * b] + n[3 * a + 1] * n[3 * b + 1] + n[3 * a + 2] * n[3 * b + 2]
        >= Patch.LEAST_COSINE;
  }

  private static double square(Mesh mesh, int halfEdge) {
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

  /** True if there are no needles. */
  boolean isEmpty() {
    return near.isEmpty();
  }

  /** True if two corners of a facet are the same point but for noise. */
  boolean isNeedle(int facet) {
    int a = near(mesh.corner(facet, 0));
    int b = near(mesh.corner(facet, 1));
    int c = near(mesh.corner(facet, 2));
    return a == b || b == c || c == a;
  }

  /** The half-edge on the other side of a half-edge, needles skipped; −1 where there is none. */
  int opposite(int halfEdge) {
    int other = halfEdges.opposite(halfEdge);
    for (int hop = 0; other >= 0 && !near.isEmpty() && hop < MOST_HOPS; hop++) {
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
