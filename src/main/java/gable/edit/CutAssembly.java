package gable.edit;

import gable.edit.ConvexCut.CutResult;
import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.section.FlatPolygon;
import gable.section.FlatPolygon.Corner;
import gable.section.PlanarTriangulation;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Turns a selection of pieces and faces into an edit: merging, triangulating, numbering. */
final class CutAssembly {

  private final WorkMesh mesh;
  private final CutPoints points;
  private final boolean adding;
  private final List<Ring> rings = new ArrayList<>();
  private final List<int[]> triangles = new ArrayList<>();
  private final List<Integer> sources = new ArrayList<>();
  private final List<Boolean> onNewFace = new ArrayList<>();

  /** One closed ring of numbers that bounds something to be triangulated. */
  private record Ring(int patch, List<Integer> ids) {}

  /** Something to be triangulated. */
  private record Patch(Vec3 normal, int source, boolean newFace, boolean flipped) {}

  private final List<Patch> patches = new ArrayList<>();

  CutAssembly(WorkMesh mesh, CutPoints points, boolean adding) {
    this.mesh = mesh;
    this.points = points;
    this.adding = adding;
  }

  CutResult assemble(Regions.Selection selection, double mergeDistance) {
    for (FacetPiece piece : selection.pieces()) {
      addRemainder(adding ? piece.reversed() : piece);
    }
    for (Regions.Face face : selection.faces()) {
      addFace(face, selection);
    }
    merge(mergeDistance);
    for (int patch = 0; patch < patches.size(); patch++) {
      triangulate(patch);
    }
    return new CutResult.Done(edit(selection));
  }

  private void addFace(Regions.Face face, Regions.Selection selection) {
    int patch = patches.size();
    int source = sourceOf(face, selection);
    patches.add(new Patch(face.normal(), source, true, !adding));
    rings.add(new Ring(patch, numbers(face.outer().nodes())));
    for (ToolFaces.Loop hole : face.holes()) {
      rings.add(new Ring(patch, numbers(hole.nodes())));
    }
  }

  /** The facet along the face with the lowest number: the same whatever the order of visits. */
  private static int sourceOf(Regions.Face face, Regions.Selection selection) {
    int source = Integer.MAX_VALUE;
    for (int piece : face.outer().pieces()) {
      source = Math.min(source, selection.allPieces().get(piece).facet());
    }
    return source != Integer.MAX_VALUE ? source : selection.pieces().get(0).facet();
  }

  private List<Integer> numbers(List<Node> nodes) {
    List<Integer> numbers = new ArrayList<>();
    for (Node node : nodes) {
      numbers.add(points.id(node));
    }
    return numbers;
  }

  /** What is left of a facet: its edges outside the tool, joined by the tool's sides run back. */
  private void addRemainder(FacetPiece piece) {
    if (piece.whole()) {
      return;
    }
    int patch = patches.size();
    int facet = piece.facet();
    patches.add(new Patch(mesh.facetNormal(facet), facet, false, false));
    Map<Node, Node> after = new LinkedHashMap<>();
    for (int k = 0; k < piece.size(); k++) {
      if (piece.side(k) >= 0) {
        after.put(piece.node(k + 1), piece.node(k));
      }
    }
    for (int edge = 0; edge < 3; edge++) {
      addOutsideOfEdge(piece, edge, after);
    }
    while (!after.isEmpty()) {
      rings.add(new Ring(patch, numbers(takeLoop(after))));
    }
  }

  private void addOutsideOfEdge(FacetPiece piece, int edge, Map<Node, Node> after) {
    Node from = Node.vertex(mesh.corner(piece.facet(), edge));
    Node to = Node.vertex(mesh.corner(piece.facet(), (edge + 1) % 3));
    for (int k = 0; k < piece.size(); k++) {
      if (piece.side(k) == -1 - edge) {
        if (!piece.node(k).equals(from)) {
          after.put(from, piece.node(k));
        }
        if (!piece.node(k + 1).equals(to)) {
          after.put(piece.node(k + 1), to);
        }
        return;
      }
    }
    after.put(from, to);
  }

  private static List<Node> takeLoop(Map<Node, Node> after) {
    List<Node> loop = new ArrayList<>();
    Node start = after.keySet().iterator().next();
    Node node = start;
    do {
      loop.add(node);
      Node next = after.remove(node);
      if (next == null) {
        throw new CutImpossible("the rest of a facet has a boundary that does not close");
      }
      node = next;
    } while (!node.equals(start));
    return loop;
  }

  private void merge(double distance) {
    for (Ring ring : rings) {
      int n = ring.ids.size();
      for (int k = 0; k < n; k++) {
        points.mergeIfClose(ring.ids.get(k), ring.ids.get((k + 1) % n), distance);
      }
    }
  }

  private void triangulate(int patchIndex) {
    Patch patch = patches.get(patchIndex);
    if (!patch.newFace && patch.normal.norm() == 0) {
      fan(patchIndex);
      return;
    }
    List<List<Corner>> outers = new ArrayList<>();
    List<List<Corner>> holes = new ArrayList<>();
    for (Ring ring : rings) {
      if (ring.patch == patchIndex) {
        for (List<Corner> simple : Rings.simple(corners(ring.ids))) {
          (FlatPolygon.area(simple, patch.normal) > 0 ? outers : holes).add(simple);
        }
      }
    }
    Map<Integer, List<List<Corner>>> holesOf = new HashMap<>();
    for (List<Corner> hole : holes) {
      int around = Rings.smallestAround(hole, outers, patch.normal);
      if (around < 0) {
        throw new CutImpossible("a hole in a face lies outside of the face after rounding");
      }
      holesOf.computeIfAbsent(around, any -> new ArrayList<>()).add(hole);
    }
    for (int k = 0; k < outers.size(); k++) {
      addTriangles(
          patch, new FlatPolygon(patch.normal, outers.get(k), holesOf.getOrDefault(k, List.of())));
    }
  }

  /** What is left of a facet without area has none either; only its edges count. */
  private void fan(int patchIndex) {
    Patch patch = patches.get(patchIndex);
    for (Ring ring : rings) {
      if (ring.patch == patchIndex) {
        for (List<Corner> simple : Rings.simple(corners(ring.ids))) {
          for (int k = 1; k + 1 < simple.size(); k++) {
            add(patch, simple.get(0).id(), simple.get(k).id(), simple.get(k + 1).id());
          }
        }
      }
    }
  }

  private List<Corner> corners(List<Integer> ids) {
    List<Corner> ring = new ArrayList<>();
    for (int id : ids) {
      int merged = points.merged(id);
      ring.add(new Corner(merged, points.point(merged)));
    }
    return ring;
  }

  private void addTriangles(Patch patch, FlatPolygon polygon) {
    int[] ids =
        PlanarTriangulation.of(polygon)
            .orElseThrow(() -> new CutImpossible("a face of the result would touch itself"));
    for (int k = 0; k < ids.length; k += 3) {
      add(patch, ids[k], ids[k + 1], ids[k + 2]);
    }
  }

  private void add(Patch patch, int a, int b, int c) {
    triangles.add(patch.flipped ? new int[] {a, c, b} : new int[] {a, b, c});
    sources.add(patch.source);
    onNewFace.add(patch.newFace);
  }

  private MeshEdit edit(Regions.Selection selection) {
    int[] removed = selection.pieces().stream().mapToInt(FacetPiece::facet).sorted().toArray();
    int base = mesh.vertexCount();
    Map<Integer, Integer> renumbered = new LinkedHashMap<>();
    int[] corners = new int[3 * triangles.size()];
    for (int k = 0; k < corners.length; k++) {
      int id = triangles.get(k / 3)[k % 3];
      corners[k] = id < base ? id : base + renumbered.computeIfAbsent(id, any -> renumbered.size());
    }
    double[] coordinates = new double[3 * renumbered.size()];
    renumbered.forEach(
        (id, number) -> {
          Vec3 p = points.point(id);
          coordinates[3 * number] = p.x();
          coordinates[3 * number + 1] = p.y();
          coordinates[3 * number + 2] = p.z();
        });
    boolean[] flags = new boolean[onNewFace.size()];
    for (int k = 0; k < flags.length; k++) {
      flags[k] = onNewFace.get(k);
    }
    int[] from = sources.stream().mapToInt(Integer::intValue).toArray();
    return new MeshEdit(removed, coordinates, corners, from, flags);
  }
}
