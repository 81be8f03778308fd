package gable.feature;

import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Walks along the boundary of a set of facets, with the set on the left. */
final class BoundaryLoops {

  /**
   * A closed walk.
   *
   * @param halfEdges half-edges of the set's own facets, in order
   * @param winding how often the walk goes about the axis, positive from u towards v
   */
  record Loop(List<Integer> halfEdges, int winding) {

    Loop {
      halfEdges = List.copyOf(halfEdges);
    }
  }

  private final Surface surface;
  private final IndexSet facets;
  private final Cylinder cylinder;

  BoundaryLoops(Surface surface, IndexSet facets, Cylinder cylinder) {
    this.surface = surface;
    this.facets = facets;
    this.cylinder = cylinder;
  }

  List<Loop> all() {
    Set<Integer> seen = new HashSet<>();
    List<Loop> loops = new ArrayList<>();
    for (int k = 0; k < facets.size(); k++) {
      for (int h = 3 * facets.get(k); h < 3 * facets.get(k) + 3; h++) {
        if (isBoundary(h) && !seen.contains(h)) {
          loops.add(walk(h, seen));
        }
      }
    }
    return loops;
  }

  boolean isBoundary(int halfEdge) {
    int other = surface.across(halfEdge);
    return other < 0 || !facets.contains(other);
  }

  private Loop walk(int first, Set<Integer> seen) {
    List<Integer> halfEdges = new ArrayList<>();
    double turned = 0;
    int h = first;
    do {
      seen.add(h);
      halfEdges.add(h);
      turned += turn(h);
      h = following(h);
    } while (h != first && !seen.contains(h));
    return new Loop(halfEdges, (int) Math.rint(turned / Angles.TURN));
  }

  private int following(int halfEdge) {
    int h = Mesh.next(halfEdge);
    while (!isBoundary(h)) {
      h = Mesh.next(surface.opposite(h));
    }
    return h;
  }

  /** Angle about the axis from the start of a half-edge to its end. */
  double turn(int halfEdge) {
    Mesh mesh = surface.mesh();
    double from = cylinder.angle(mesh.point(mesh.origin(halfEdge)));
    double to = cylinder.angle(mesh.point(mesh.target(halfEdge)));
    return Angles.wrapped(to - from);
  }
}
