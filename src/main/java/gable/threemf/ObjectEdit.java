package gable.threemf;

import gable.mesh.MeshEdit;
import java.util.List;

/**
 * A change of the mesh of an object, for all or for some of its uses.
 *
 * @param object the object
 * @param edit the change in object units, its points on the grid
 * @param grid the grid of its new points
 * @param uses the uses that it is for; empty for all. Uses that no edit names keep the object as it
 *     is
 */
public record ObjectEdit(MeshObject object, MeshEdit edit, VertexGrid grid, List<Use> uses) {

  public ObjectEdit {
    uses = List.copyOf(uses);
    if (edit.facetCount() < edit.removedCount()) {
      throw new IllegalArgumentException(
          "the places of "
              + edit.removedCount()
              + " facets cannot be filled by "
              + edit.facetCount());
    }
    for (int i = 0; i < edit.pointCount(); i++) {
      for (int axis = 0; axis < 3; axis++) {
        double coordinate = edit.coordinate(i, axis);
        if (grid.snap(coordinate) != coordinate) {
          throw new IllegalArgumentException("not on the grid: " + coordinate);
        }
      }
    }
  }
}
