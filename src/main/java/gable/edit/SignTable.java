package gable.edit;

import gable.geom.Plane;
import gable.geom.Predicates;
import gable.geom.Vec3;
import gable.mesh.WorkMesh;
import gable.plan.ConvexTool;
import gable.plan.ToolPlane;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * On which side of every plane of a tool each vertex and each named point of the mesh lies.
 *
 * <p>For each vertex the signed distances from all planes are computed once, rounded once, and set
 * to zero where the vertex lies in a plane by construction ({@link ToolPlane#snap}). From then on
 * this table is the truth: over a facet the distances are linear, so every question about where
 * edges cross planes and in which order is the exact sign of a determinant of two or three rows of
 * the table. Neighbouring facets ask the same rows and cannot disagree, however badly the
 * coordinates are rounded.
 *
 * <p>Zeros are broken by shrinking the tool: plane k is drawn in by ε<sub>k</sub>, with
 * ε<sub>0</sub> ≫ ε<sub>1</sub> ≫ … (H. Edelsbrunner, E. P. Mücke, Simulation of Simplicity, ACM
 * Transactions on Graphics 9, 1990). So a vertex in a plane is outside, and a facet in a plane
 * stays.
 */
final class SignTable {

  /** No plane: the facet is outside of one. */
  static final int OUTSIDE = -1;

  private static final Vec3 ONES = new Vec3(1, 1, 1);

  private final WorkMesh mesh;
  private final List<ToolPlane> planes;
  private final Map<Integer, double[]> rows = new HashMap<>();

  SignTable(WorkMesh mesh, ConvexTool tool) {
    this.mesh = mesh;
    this.planes = tool.planes();
  }

  int planeCount() {
    return planes.size();
  }

  /**
   * The planes, ascending, that do not have a facet strictly inside; {@link #OUTSIDE} alone if one
   * has it strictly outside.
   */
  int[] planesAcross(int facet) {
    double[] a = row(mesh.corner(facet, 0));
    double[] b = row(mesh.corner(facet, 1));
    double[] c = row(mesh.corner(facet, 2));
    int[] found = new int[3];
    int count = 0;
    for (int k = 0; k < a.length; k++) {
      if (a[k] > 0 && b[k] > 0 && c[k] > 0) {
        return new int[] {OUTSIDE};
      }
      if (!(a[k] < 0 && b[k] < 0 && c[k] < 0)) {
        found = count == found.length ? Arrays.copyOf(found, 2 * count) : found;
        found[count++] = k;
      }
    }
    return Arrays.copyOf(found, count);
  }

  /** Signed distance of a vertex from a plane; 0 if it lies in it by construction. */
  double distance(int vertex, int plane) {
    return row(vertex)[plane];
  }

  private double[] row(int vertex) {
    return rows.computeIfAbsent(vertex, this::measured);
  }

  private double[] measured(int vertex) {
    Vec3 p = mesh.point(vertex);
    double[] row = new double[planes.size()];
    for (int k = 0; k < row.length; k++) {
      Plane plane = planes.get(k).plane();
      double distance = plane.signedDistance(p);
      row[k] = Math.abs(distance) <= planes.get(k).snap() ? 0 : distance;
    }
    return row;
  }

  /** True if a point of a facet lies inside a plane, ties broken. */
  boolean inside(Node node, int facet, int plane) {
    return switch (node.kind()) {
      case VERTEX -> distance(node.a(), plane) < 0;
      case CROSSING -> crossingSide(node, plane) < 0;
      case PIERCING -> piercingSide(node, facet, plane) < 0;
      case CORNER -> throw new IllegalStateException("a corner of the tool lies on no facet");
    };
  }

  /** Side of the point where edge PQ crosses plane j, with respect to plane k. */
  private int crossingSide(Node node, int k) {
    int j = node.c();
    double[] p = row(node.a());
    double[] q = row(node.b());
    double pj = p[j];
    double qj = q[j];
    double pk = p[k];
    double qk = q[k];
    int way = pj > qj ? 1 : -1;
    int sign = Predicates.det2(pj, pk, qj, qk);
    if (sign == 0) {
      // det + e_j (q_k - p_k) + e_k (p_j - q_j): the earlier plane decides first
      int byJ = Double.compare(qk, pk);
      sign = j < k && byJ != 0 ? byJ : way;
    }
    return Integer.signum(sign) * way;
  }

  /** Side of the point where planes i and j meet on a facet, with respect to plane k. */
  private int piercingSide(Node node, int facet, int k) {
    Vec3 i = onFacet(facet, node.b());
    Vec3 j = onFacet(facet, node.c());
    Vec3 row = onFacet(facet, k);
    int way = Predicates.det3(i, j, ONES);
    int sign = Predicates.det3(i, j, row);
    if (sign == 0) {
      sign = tieOnFacet(node, k, i, j, row);
    }
    return sign * way;
  }

  private static int tieOnFacet(Node node, int k, Vec3 i, Vec3 j, Vec3 row) {
    int byI = Predicates.det3(ONES, j, row);
    int byJ = Predicates.det3(i, ONES, row);
    int byK = Predicates.det3(i, j, ONES);
    int[] inOrder =
        k < node.b()
            ? new int[] {byK, byI, byJ}
            : k < node.c() ? new int[] {byI, byK, byJ} : new int[] {byI, byJ, byK};
    for (int sign : inOrder) {
      if (sign != 0) {
        return sign;
      }
    }
    return 0;
  }

  private Vec3 onFacet(int facet, int plane) {
    return new Vec3(
        distance(mesh.corner(facet, 0), plane),
        distance(mesh.corner(facet, 1), plane),
        distance(mesh.corner(facet, 2), plane));
  }

  /** The vertex that a crossing or piercing falls on by construction, or −1. */
  int vertexAt(Node node) {
    if (node.kind() == Node.Kind.VERTEX) {
      return node.a();
    }
    if (node.kind() == Node.Kind.CROSSING) {
      return distance(node.a(), node.c()) == 0
          ? node.a()
          : distance(node.b(), node.c()) == 0 ? node.b() : -1;
    }
    if (node.kind() == Node.Kind.PIERCING) {
      for (int k = 0; k < 3; k++) {
        int vertex = mesh.corner(node.a(), k);
        if (distance(vertex, node.b()) == 0 && distance(vertex, node.c()) == 0) {
          return vertex;
        }
      }
    }
    return -1;
  }

  /** Position of a crossing or piercing, computed from the same table. */
  Vec3 position(Node node) {
    return switch (node.kind()) {
      case VERTEX -> mesh.point(node.a());
      case CROSSING -> {
        Vec3 p = mesh.point(node.a());
        Vec3 q = mesh.point(node.b());
        double sp = distance(node.a(), node.c());
        double sq = distance(node.b(), node.c());
        yield p.along(q.minus(p), sp / (sp - sq));
      }
      case PIERCING -> {
        Vec3 weights = onFacet(node.a(), node.b()).cross(onFacet(node.a(), node.c()));
        double total = weights.dot(ONES);
        yield mesh.point(mesh.corner(node.a(), 0))
            .times(weights.x() / total)
            .plus(mesh.point(mesh.corner(node.a(), 1)).times(weights.y() / total))
            .plus(mesh.point(mesh.corner(node.a(), 2)).times(weights.z() / total));
      }
      case CORNER -> throw new IllegalStateException("the tool knows its corners");
    };
  }
}
