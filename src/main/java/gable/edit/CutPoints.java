package gable.edit;

import gable.geom.ConvexSolid;
import gable.geom.Vec3;
import gable.mesh.WorkMesh;
import gable.plan.ConvexTool;
import gable.section.FlatPolygon;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * Gives every named point of a cut its number and its place on the output grid. Vertices of the
 * mesh keep their number; a point that falls on a vertex by construction is that vertex; new points
 * that come too close to another point along an edge are merged with it.
 */
final class CutPoints {

  private final WorkMesh mesh;
  private final SignTable signs;
  private final UnaryOperator<Vec3> grid;
  private final Map<Node, Vec3> corners = new HashMap<>();
  private final Map<Node, Integer> ids = new HashMap<>();
  private final List<Vec3> added = new ArrayList<>();
  private final Map<Integer, Integer> slots = new HashMap<>();
  private final List<Integer> slotIds = new ArrayList<>();
  private final Sets merged = new Sets(64);
  private final Map<Integer, List<Integer>> standsFor = new HashMap<>();

  CutPoints(WorkMesh mesh, SignTable signs, ConvexTool tool, UnaryOperator<Vec3> grid) {
    this.mesh = mesh;
    this.signs = signs;
    this.grid = grid;
    for (ConvexSolid.Edge edge : tool.solid().edges()) {
      corners.put(ToolFaces.cornerNode(edge.from()), edge.from().point());
      corners.put(ToolFaces.cornerNode(edge.to()), edge.to().point());
    }
  }

  /** Number of a named point before merging. */
  int id(Node node) {
    Integer known = ids.get(node);
    if (known != null) {
      return known;
    }
    int vertex = signs.vertexAt(node);
    int id = vertex >= 0 ? vertex : mesh.vertexCount() + added.size();
    if (vertex < 0) {
      Vec3 corner = corners.get(node);
      added.add(
          grid.apply(
              corner == null || node.kind() != Node.Kind.CORNER ? signs.position(node) : corner));
    }
    ids.put(node, id);
    return id;
  }

  /** The numbered corners of a loop, runs of equal ones once, before merging. */
  List<FlatPolygon.Corner> ring(List<Node> nodes) {
    List<FlatPolygon.Corner> ring = new ArrayList<>();
    for (Node node : nodes) {
      int id = id(node);
      if (ring.isEmpty() || ring.get(ring.size() - 1).id() != id) {
        ring.add(new FlatPolygon.Corner(id, point(id)));
      }
    }
    if (ring.size() > 1 && ring.get(0).id() == ring.get(ring.size() - 1).id()) {
      ring.remove(ring.size() - 1);
    }
    return ring;
  }

  Vec3 point(int id) {
    return id < mesh.vertexCount() ? mesh.point(id) : added.get(id - mesh.vertexCount());
  }

  /** Number after merging. */
  int merged(int id) {
    Integer slot = slots.get(id);
    return slot == null ? id : slotIds.get(merged.find(slot));
  }

  /**
   * Merges two numbers unless both are vertices of the mesh, or a point that one of them stands for
   * would move too far: several points in a row may each be near the next.
   */
  void mergeIfClose(int one, int other, double distance) {
    int a = merged(one);
    int b = merged(other);
    boolean bothOld = a < mesh.vertexCount() && b < mesh.vertexCount();
    if (a != b && !bothOld && point(a).distance(point(b)) < distance) {
      int keep = Math.min(a, b);
      int go = Math.max(a, b);
      List<Integer> moved = standsFor.getOrDefault(go, List.of(go));
      if (moved.stream().allMatch(id -> point(id).distance(point(keep)) < distance)) {
        int slotA = slot(a);
        int slotB = slot(b);
        merged.join(slotA, slotB);
        slotIds.set(merged.find(slotA), keep);
        standsFor.computeIfAbsent(keep, id -> new ArrayList<>(List.of(id))).addAll(moved);
      }
    }
  }

  private int slot(int id) {
    return slots.computeIfAbsent(
        id,
        any -> {
          slotIds.add(id);
          merged.grow(slotIds.size());
          return slotIds.size() - 1;
        });
  }
}
