package gable.feature;

import gable.geom.Box3;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.mesh.WorkMesh;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The outlines in which a plane cuts a closed mesh. A vertex in the plane counts as above it, so
 * every facet that has vertices on both sides is entered over one edge and left over another.
 */
final class Slice {

  private final WorkMesh mesh;
  private final Plane plane;

  Slice(WorkMesh mesh, Plane plane) {
    this.mesh = mesh;
    this.plane = plane;
  }

  /** Closed outlines all of whose facets meet a box. */
  List<List<Vec3>> loops(Box3 near) {
    List<Integer> cut = new ArrayList<>();
    mesh.visit(
        near,
        facet -> {
          if (edge(facet, true) >= 0) {
            cut.add(facet);
          }
        });
    cut.sort(Integer::compare);
    Set<Integer> open = new HashSet<>(cut);
    List<List<Vec3>> loops = new ArrayList<>();
    for (int start : cut) {
      List<Vec3> loop = new ArrayList<>();
      int facet = start;
      while (open.remove(facet)) {
        int leaving = edge(facet, true);
        loop.add(crossing(leaving));
        facet = mesh.opposite(leaving) / 3;
      }
      if (facet == start && loop.size() >= 3) {
        loops.add(loop);
      }
    }
    return loops;
  }

  /** Half-edge of a facet that goes down through the plane, or up; −1 if none does. */
  private int edge(int facet, boolean down) {
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      boolean from = above(mesh.origin(h));
      boolean to = above(mesh.origin(Mesh.next(h)));
      if (from != to && from == down) {
        return h;
      }
    }
    return -1;
  }

  private boolean above(int vertex) {
    return plane.signedDistance(mesh.point(vertex)) >= 0;
  }

  private Vec3 crossing(int halfEdge) {
    Vec3 a = mesh.point(mesh.origin(halfEdge));
    Vec3 b = mesh.point(mesh.target(halfEdge));
    double da = plane.signedDistance(a);
    double db = plane.signedDistance(b);
    return a.along(b.minus(a), da / (da - db));
  }
}
