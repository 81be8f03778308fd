package gable.pipeline;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;

/**
 * By how much an edit changes the enclosed volume, by the divergence theorem over the facets that
 * come and go. They bound a closed surface together, so any point may be the apex; one of the
 * edit's own keeps the digits.
 */
final class EditVolume {

  private final WorkMesh before;
  private double change;

  /** For edits of a mesh that is still as it was before the edit. */
  EditVolume(WorkMesh before) {
    this.before = before;
  }

  /** Measures an edit; to be called before it is applied. */
  void measure(MeshEdit edit) {
    if (edit.facetCount() == 0) {
      return;
    }
    Vec3 apex = point(edit, edit.corner(0, 0));
    double sum = 0;
    for (int index = 0; index < edit.facetCount(); index++) {
      sum +=
          corner(
              apex,
              point(edit, edit.corner(index, 0)),
              point(edit, edit.corner(index, 1)),
              point(edit, edit.corner(index, 2)));
    }
    for (int index = 0; index < edit.removedCount(); index++) {
      int facet = edit.removed(index);
      sum -=
          corner(
              apex,
              before.point(before.corner(facet, 0)),
              before.point(before.corner(facet, 1)),
              before.point(before.corner(facet, 2)));
    }
    change = sum / 6;
  }

  /** The change in cubic millimetres, negative if material goes; 0 before it is measured. */
  double change() {
    return change;
  }

  private Vec3 point(MeshEdit edit, int vertex) {
    int added = vertex - before.vertexCount();
    return added < 0
        ? before.point(vertex)
        : new Vec3(edit.coordinate(added, 0), edit.coordinate(added, 1), edit.coordinate(added, 2));
  }

  /** Six times the signed volume of a tetrahedron. */
  private static double corner(Vec3 apex, Vec3 a, Vec3 b, Vec3 c) {
    return a.minus(apex).dot(b.minus(apex).cross(c.minus(apex)));
  }
}
