package gable.report;

import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.List;

/** Slices of one mesh, each made once: rows of bores often have their middles in one plane. */
final class Slices {

  private final Mesh mesh;
  private final List<SectionPlane> planes = new ArrayList<>();
  private final List<Slice> slices = new ArrayList<>();

  Slices(Mesh mesh) {
    this.mesh = mesh;
  }

  Slice at(SectionPlane plane) {
    for (int k = 0; k < planes.size(); k++) {
      if (planes.get(k).isSame(plane)) {
        return slices.get(k);
      }
    }
    Slice slice = Slice.of(mesh, plane);
    planes.add(plane);
    slices.add(slice);
    return slice;
  }

  Mesh mesh() {
    return mesh;
  }
}
