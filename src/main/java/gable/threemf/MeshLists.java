package gable.threemf;

import gable.threemf.ModelXml.ListXml;
import gable.threemf.ModelXml.MeshXml;
import gable.threemf.ModelXml.ObjectXml;
import java.util.List;
import java.util.Optional;

/**
 * The two lists of a mesh; an empty list where the element is empty or missing.
 *
 * @param vertices the vertex list
 * @param triangles the triangle list
 */
record MeshLists(MeshList vertices, MeshList triangles) {

  static MeshLists of(PartFacts facts, ObjectXml object) {
    MeshXml mesh = object.mesh.get(0);
    return new MeshLists(
        list(facts, mesh.vertices)
            .orElseGet(() -> MeshList.vertices(new double[0], Optional.empty(), false)),
        list(facts, mesh.triangles)
            .orElseGet(
                () ->
                    MeshList.triangles(
                        new int[0], new int[0], Optional.empty(), false, new PropertyUses())));
  }

  private static Optional<MeshList> list(PartFacts facts, List<ListXml> elements) {
    return elements.isEmpty()
        ? Optional.empty()
        : Optional.ofNullable(facts.lists().get(elements.get(0).number));
  }

  /** True if elements of another kind stand in a list. */
  boolean foreign() {
    return vertices.foreign() || triangles.foreign();
  }
}
