package gable.edit;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.UnaryOperator;

/**
 * Sees to it that an edited mesh has at least as many facets as before, so that every place in its
 * list of facets stays taken and all others keep their numbers. Where facets are missing, the
 * longest edge between two new facets is halved, which adds two and keeps shapes good.
 */
public final class SlotFiller {

  /** A half shorter than this, in millimetres, is not made: points must stay apart in the file. */
  private static final double SHORTEST_HALF = 1e-3;

  private final WorkMesh mesh;
  private final UnaryOperator<Vec3> grid;
  private final PriorityQueue<Inner> edges =
      new PriorityQueue<>(
          Comparator.comparingDouble(Inner::length).reversed().thenComparing(Inner::halfEdge));

  private record Inner(double length, int halfEdge) {}

  private SlotFiller(WorkMesh mesh, UnaryOperator<Vec3> grid) {
    this.mesh = mesh;
    this.grid = grid;
  }

  /**
   * Halves edges until no place is empty.
   *
   * @param mesh the edited mesh
   * @param grid takes a new point to the place at which it will be written
   * @return false if places stay empty, because no edge is left that can be halved
   */
  public static boolean fill(WorkMesh mesh, UnaryOperator<Vec3> grid) {
    return new SlotFiller(mesh, grid).fill();
  }

  private boolean fill() {
    int missing = missing();
    if (missing <= 0) {
      return true;
    }
    for (int facet = mesh.base().facetCount(); facet < mesh.facetCount(); facet++) {
      offer(facet);
    }
    while (missing > 0 && !edges.isEmpty()) {
      Inner edge = edges.remove();
      if (current(edge) && halve(edge.halfEdge)) {
        missing -= 2;
      }
    }
    return missing <= 0;
  }

  /** Facets taken away from the first mesh less facets added since and still there. */
  private int missing() {
    int missing = 0;
    for (int facet = 0; facet < mesh.base().facetCount(); facet++) {
      missing += mesh.alive(facet) ? 0 : 1;
    }
    for (int facet = mesh.base().facetCount(); facet < mesh.facetCount(); facet++) {
      missing -= mesh.alive(facet) ? 1 : 0;
    }
    return missing;
  }

  private void offer(int facet) {
    if (!mesh.alive(facet)) {
      return;
    }
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      int other = mesh.opposite(h);
      if (other > h && facet >= mesh.base().facetCount()) {
        edges.add(new Inner(length(h), h));
      } else if (other / 3 >= mesh.base().facetCount()) {
        edges.add(new Inner(length(h), Math.min(h, other)));
      }
    }
  }

  private double length(int h) {
    return mesh.point(mesh.origin(h)).distance(mesh.point(mesh.target(h)));
  }

  private boolean current(Inner edge) {
    int other = mesh.opposite(edge.halfEdge);
    return mesh.alive(edge.halfEdge / 3)
        && mesh.alive(other / 3)
        && edge.halfEdge / 3 >= mesh.base().facetCount()
        && other / 3 >= mesh.base().facetCount()
        && length(edge.halfEdge) == edge.length;
  }

  private boolean halve(int h) {
    int other = mesh.opposite(h);
    int a = mesh.origin(h);
    int b = mesh.target(h);
    int c = apex(h);
    int d = apex(other);
    Vec3 middle = grid.apply(mesh.point(a).plus(mesh.point(b)).times(0.5));
    int m = mesh.vertexCount();
    int[] corners = {a, m, c, m, b, c, b, m, d, m, a, d};
    if (c == d || !sound(corners, middle, h / 3, other / 3)) {
      return false;
    }
    int[] removed = {Math.min(h / 3, other / 3), Math.max(h / 3, other / 3)};
    int[] sources = {h / 3, h / 3, other / 3, other / 3};
    boolean[] flags = new boolean[4];
    int first = mesh.facetCount();
    mesh.apply(
        new MeshEdit(
            removed, new double[] {middle.x(), middle.y(), middle.z()}, corners, sources, flags));
    for (int facet = first; facet < first + 4; facet++) {
      offer(facet);
    }
    return true;
  }

  private int apex(int h) {
    return mesh.origin(gable.mesh.Mesh.previous(h));
  }

  /** Each quarter keeps the direction of the facet that it is cut from, and is not too small. */
  private boolean sound(int[] corners, Vec3 middle, int facet, int other) {
    List<Vec3> points = new ArrayList<>();
    for (int corner : corners) {
      points.add(corner == mesh.vertexCount() ? middle : mesh.point(corner));
    }
    for (int k = 0; k < 4; k++) {
      Vec3 p = points.get(3 * k);
      Vec3 q = points.get(3 * k + 1);
      Vec3 r = points.get(3 * k + 2);
      Vec3 normal = q.minus(p).cross(r.minus(p));
      Vec3 before = mesh.facetNormal(k < 2 ? facet : other);
      double longest = Math.max(p.distance(q), Math.max(q.distance(r), r.distance(p)));
      boolean turned = !(normal.dot(before) > 0.99 * normal.norm() * before.norm());
      boolean thin = normal.norm() < SHORTEST_HALF * longest;
      if (turned || thin || p.distance(q) < SHORTEST_HALF) {
        return false;
      }
    }
    return true;
  }
}
