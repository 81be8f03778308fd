package gable.threemf;

import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import java.util.List;

/** Small edits of meshes, for tests. */
public final class Edits {

  private static final VertexGrid SIX = new VertexGrid(6);

  private Edits() {}

  /** Splits a facet at its centre into three, which lie inside of it. */
  public static ObjectEdit split(MeshObject object, int facet) {
    return split(object, facet, false, List.of());
  }

  /** The same, said to be on quite new faces or not, and for some uses only. */
  public static ObjectEdit split(MeshObject object, int facet, boolean onNewFace, List<Use> uses) {
    return split(object, facet, onNewFace, SIX, uses);
  }

  /** The same on a grid, for some uses. */
  public static ObjectEdit split(MeshObject object, int facet, VertexGrid grid, List<Use> uses) {
    return split(object, facet, false, grid, uses);
  }

  private static ObjectEdit split(
      MeshObject object, int facet, boolean onNewFace, VertexGrid grid, List<Use> uses) {
    Mesh mesh = object.mesh();
    double[] centre = new double[3];
    int[] corners = new int[9];
    for (int k = 0; k < 3; k++) {
      for (int axis = 0; axis < 3; axis++) {
        centre[axis] += mesh.point(mesh.corner(facet, k)).get(axis) / 3;
      }
      corners[3 * k] = mesh.corner(facet, k);
      corners[3 * k + 1] = mesh.corner(facet, (k + 1) % 3);
      corners[3 * k + 2] = mesh.vertexCount();
    }
    for (int axis = 0; axis < 3; axis++) {
      centre[axis] = grid.snap(centre[axis]);
    }
    boolean[] flags = {onNewFace, onNewFace, onNewFace};
    int[] sources = {facet, facet, facet};
    MeshEdit edit = new MeshEdit(new int[] {facet}, centre, corners, sources, flags);
    return new ObjectEdit(object, edit, grid, uses);
  }
}
