package gable.verify;

import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import java.util.ArrayList;
import java.util.List;

/**
 * An edit and what is near it, with numbers of its own: first the facets taken away, then the new
 * ones, then the staying ones whose box meets that of the edit. Everything that the edit can spoil
 * is in here, so proofs cost what the patch costs, however large the mesh is.
 *
 * <p>Print space. Needs an edit whose numbers exist.
 */
final class Patch {

  private final int[] corners;
  private final int[] ids;
  private final List<Vec3> points = new ArrayList<>();
  private final IntList vertices = new IntList();
  private final LongTable local = new LongTable(256);
  private final int firstAdded;
  private final int firstStaying;
  private final int oldVertices;
  private final boolean[] touched;

  private Patch(WorkMesh before, MeshEdit edit, IntList staying) {
    firstAdded = edit.removedCount();
    firstStaying = firstAdded + edit.facetCount();
    oldVertices = before.vertexCount();
    ids = new int[firstStaying + staying.size()];
    corners = new int[3 * ids.length];
    for (int f = 0; f < ids.length; f++) {
      boolean added = isAdded(f);
      ids[f] =
          added ? f - firstAdded : f < firstAdded ? edit.removed(f) : staying.get(f - firstStaying);
      for (int k = 0; k < 3; k++) {
        int vertex = added ? edit.corner(ids[f], k) : before.corner(ids[f], k);
        corners[3 * f + k] = localVertex(before, edit, vertex);
      }
    }
    touched = new boolean[points.size()];
    for (int c = 0; c < 3 * firstStaying; c++) {
      touched[corners[c]] = true;
    }
  }

  /**
   * The patch of an edit.
   *
   * @param tool box around the tool, where facets are looked at as well
   * @param margin how far beyond the edit facets are looked at, in millimetres
   */
  static Patch of(WorkMesh before, MeshEdit edit, Box3 tool, double margin) {
    Box3 box = tool;
    for (int k = 0; k < edit.removedCount(); k++) {
      box = box.with(before.facetBox(edit.removed(k)));
    }
    for (int k = 0; k < edit.facetCount(); k++) {
      for (int c = 0; c < 3; c++) {
        box = box.with(pointAfter(before, edit, edit.corner(k, c)));
      }
    }
    IntList staying = new IntList();
    before.visit(
        box.grown(margin),
        facet -> {
          if (!isRemoved(edit, facet)) {
            staying.add(facet);
          }
        });
    staying.sort();
    return new Patch(before, edit, staying);
  }

  private int localVertex(WorkMesh before, MeshEdit edit, int vertex) {
    int known = local.putIfAbsent(vertex, points.size());
    if (known != LongTable.NONE) {
      return known;
    }
    points.add(pointAfter(before, edit, vertex));
    vertices.add(vertex);
    return points.size() - 1;
  }

  private static Vec3 pointAfter(WorkMesh before, MeshEdit edit, int vertex) {
    int index = vertex - before.vertexCount();
    return index < 0
        ? before.point(vertex)
        : new Vec3(edit.coordinate(index, 0), edit.coordinate(index, 1), edit.coordinate(index, 2));
  }

  /** True if the edit takes a facet away; its list of these ascends. */
  static boolean isRemoved(MeshEdit edit, int facet) {
    return indexOfRemoved(edit, facet) >= 0;
  }

  /**
   * Place of a facet among those taken away, which is its number in the patch; negative if none.
   */
  static int indexOfRemoved(MeshEdit edit, int facet) {
    int low = 0;
    int high = edit.removedCount() - 1;
    while (low <= high) {
      int middle = (low + high) >>> 1;
      int value = edit.removed(middle);
      if (value == facet) {
        return middle;
      }
      if (value < facet) {
        low = middle + 1;
      } else {
        high = middle - 1;
      }
    }
    return -1;
  }

  int facetCount() {
    return ids.length;
  }

  /** Facets before this number are taken away. */
  int firstAdded() {
    return firstAdded;
  }

  /** Facets from this number on stay. */
  int firstStaying() {
    return firstStaying;
  }

  boolean isAdded(int facet) {
    return facet >= firstAdded && facet < firstStaying;
  }

  boolean isStaying(int facet) {
    return facet >= firstStaying;
  }

  /** Number of an old facet in the mesh, or of a new one in the edit. */
  int id(int facet) {
    return ids[facet];
  }

  int corner(int facet, int k) {
    return corners[3 * facet + k];
  }

  int vertexCount() {
    return points.size();
  }

  Vec3 point(int vertex) {
    return points.get(vertex);
  }

  Vec3 point(int facet, int k) {
    return points.get(corners[3 * facet + k]);
  }

  /** Number of a vertex in the mesh after the edit. */
  int vertexId(int vertex) {
    return vertices.get(vertex);
  }

  boolean isNewVertex(int vertex) {
    return vertices.get(vertex) >= oldVertices;
  }

  /** True for a corner of a facet that goes or comes. */
  boolean isTouched(int vertex) {
    return touched[vertex];
  }

  /** True if a facet has a corner in common with one that goes or comes. */
  boolean touches(int facet) {
    return touched[corner(facet, 0)] || touched[corner(facet, 1)] || touched[corner(facet, 2)];
  }

  /** Normal as long as twice the area. */
  Vec3 normal(int facet) {
    Vec3 a = point(facet, 0);
    return point(facet, 1).minus(a).cross(point(facet, 2).minus(a));
  }

  /** How a facet is named in a sentence. */
  String name(int facet) {
    return (isAdded(facet) ? "new facet " : "facet ") + ids[facet];
  }
}
