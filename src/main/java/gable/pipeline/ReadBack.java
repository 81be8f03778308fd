package gable.pipeline;

import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.threemf.ComponentsObject;
import gable.threemf.MeshObject;
import gable.threemf.ModelObject;
import gable.threemf.ModelPackage;
import gable.threemf.ObjectEdit;
import gable.threemf.Reference;
import gable.threemf.Use;
import java.util.BitSet;
import java.util.List;

/**
 * Checks one edited mesh of a package that was written and read again: every facet is the old one
 * or the one that was meant, coordinate by coordinate, the mesh is closed, and no new facet falls
 * together where coordinates are held in single precision, as many readers do.
 *
 * <p>A difference is a fault of this program, not of the file.
 */
final class ReadBack {

  private final MeshObject before;
  private final MeshEdit edit;
  private final List<Use> uses;

  ReadBack(ObjectEdit change) {
    this.before = change.object();
    this.edit = change.edit();
    this.uses = change.uses();
  }

  /**
   * Checks.
   *
   * @throws IllegalStateException if the mesh is not what it was meant to be
   */
  void check(ModelPackage written) {
    if (uses.isEmpty()) {
      check(mesh(byId(written)));
    }
    for (Use use : uses) {
      check(mesh(byUse(written, use)));
    }
  }

  private void check(Mesh mesh) {
    int vertices = before.mesh().vertexCount() + edit.pointCount();
    int facets = before.mesh().facetCount() + edit.facetCount() - edit.removedCount();
    require(mesh.vertexCount() == vertices && mesh.facetCount() == facets, "its size");
    Beside<Boolean> closed =
        Beside.start(() -> HalfEdges.close(mesh) || Skin.of(mesh).edges().closed());
    for (int vertex = 0; vertex < vertices; vertex++) {
      if (!isMeant(mesh, vertex)) {
        throw fault("vertex " + vertex);
      }
    }
    checkCorners(mesh);
    require(closed.result(), "that it is closed");
    for (int index = 0; index < edit.facetCount(); index++) {
      if (!isFacet(mesh, index) && wasFacet(index)) {
        throw fault("new facet " + index + " in single precision");
      }
    }
  }

  private ModelObject byId(ModelPackage written) {
    return written.part(before.part()).flatMap(part -> part.object(before.id())).orElseThrow();
  }

  /** Items and components keep their order, so the same way leads to the same use. */
  private static ModelObject byUse(ModelPackage written, Use use) {
    Reference step = written.root().items().get(use.item());
    for (Reference component : use.path().subList(1, use.path().size())) {
      ModelObject group = written.target(step).orElseThrow();
      if (!(group instanceof ComponentsObject assembly)) {
        throw new IllegalStateException(use.words() + " leads to " + group);
      }
      step = assembly.components().get(component.index());
    }
    return written.target(step).orElseThrow();
  }

  private Mesh mesh(ModelObject object) {
    if (object instanceof MeshObject mesh && object.problem().isEmpty()) {
      return mesh.mesh();
    }
    throw new IllegalStateException("what was written of " + before + " cannot be read");
  }

  private boolean isMeant(Mesh mesh, int vertex) {
    Mesh old = before.mesh();
    int added = vertex - old.vertexCount();
    return added < 0
        ? mesh.x(vertex) == old.x(vertex)
            && mesh.y(vertex) == old.y(vertex)
            && mesh.z(vertex) == old.z(vertex)
        : mesh.x(vertex) == edit.coordinate(added, 0)
            && mesh.y(vertex) == edit.coordinate(added, 1)
            && mesh.z(vertex) == edit.coordinate(added, 2);
  }

  /** Without a list of what is meant: it would be as long as the mesh, where memory is short. */
  private void checkCorners(Mesh mesh) {
    Mesh old = before.mesh();
    BitSet replaced = new BitSet(old.facetCount());
    for (int index = 0; index < edit.facetCount(); index++) {
      int slot = slot(index);
      replaced.set(slot);
      for (int k = 0; k < 3; k++) {
        require(mesh.corner(slot, k) == edit.corner(index, k), "facet " + slot);
      }
    }
    for (int facet = 0; facet < old.facetCount(); facet++) {
      if (!replaced.get(facet) && !isSame(mesh, old, facet)) {
        throw fault("facet " + facet);
      }
    }
  }

  /** Where a new facet stands: in the place of one that went, or behind the old ones. */
  private int slot(int index) {
    return index < edit.removedCount()
        ? edit.removed(index)
        : before.mesh().facetCount() + index - edit.removedCount();
  }

  private static boolean isSame(Mesh one, Mesh other, int facet) {
    return one.corner(facet, 0) == other.corner(facet, 0)
        && one.corner(facet, 1) == other.corner(facet, 1)
        && one.corner(facet, 2) == other.corner(facet, 2);
  }

  private boolean isFacet(Mesh mesh, int index) {
    return isFacet(mesh, edit.corner(index, 0), edit.corner(index, 1), edit.corner(index, 2));
  }

  /** False if the facet within which a new one lies was without area before. */
  private boolean wasFacet(int index) {
    Mesh old = before.mesh();
    int source = edit.source(index);
    return isFacet(old, old.corner(source, 0), old.corner(source, 1), old.corner(source, 2));
  }

  private static boolean isFacet(Mesh mesh, int a, int b, int c) {
    return !together(mesh, a, b) && !together(mesh, b, c) && !together(mesh, c, a);
  }

  private static boolean together(Mesh mesh, int a, int b) {
    return (float) mesh.x(a) == (float) mesh.x(b)
        && (float) mesh.y(a) == (float) mesh.y(b)
        && (float) mesh.z(a) == (float) mesh.z(b);
  }

  private void require(boolean holds, String what) {
    if (!holds) {
      throw fault(what);
    }
  }

  private IllegalStateException fault(String what) {
    return new IllegalStateException(before + " was not written as meant: " + what);
  }
}
