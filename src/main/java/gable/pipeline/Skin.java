package gable.pipeline;

import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.HashMap;
import java.util.Map;

/**
 * A mesh with its half-edges, in which equal points are one vertex.
 *
 * <p>Some producers repeat a vertex for each of its triangles. By numbers such a mesh has nothing
 * but open edges; by places it may be closed. If so, the corners are taken to the first of each set
 * of equal vertices, while the vertices themselves keep their numbers, so that an edit of the skin
 * is an edit of the mesh.
 *
 * @param mesh the mesh, its corners taken together where that was needed
 * @param edges its half-edges
 * @param joined whether corners were taken together
 */
record Skin(Mesh mesh, HalfEdges edges, boolean joined) {

  /** The skin of a mesh. If it is not closed either way, the mesh as it is. */
  static Skin of(Mesh mesh) {
    HalfEdges asWritten = HalfEdges.of(mesh);
    if (asWritten.closed()) {
      return new Skin(mesh, asWritten, false);
    }
    Mesh together = together(mesh);
    HalfEdges byPlace = HalfEdges.of(together);
    return byPlace.closed() ? new Skin(together, byPlace, true) : new Skin(mesh, asWritten, false);
  }

  private static Mesh together(Mesh mesh) {
    int[] first = firstAtSamePlace(mesh);
    int[] corners = mesh.copyOfCorners();
    for (int c = 0; c < corners.length; c++) {
      corners[c] = first[corners[c]];
    }
    return Mesh.of(mesh.copyOfPoints(), corners);
  }

  /** For each vertex the first one that has equal coordinates. */
  static int[] firstAtSamePlace(Mesh mesh) {
    Map<Vec3, Integer> first = new HashMap<>();
    int[] number = new int[mesh.vertexCount()];
    for (int vertex = 0; vertex < number.length; vertex++) {
      // adding zero makes minus zero plain zero, which is the same place
      Vec3 place = mesh.point(vertex).plus(Vec3.ZERO);
      Integer known = first.putIfAbsent(place, vertex);
      number[vertex] = known == null ? vertex : known;
    }
    return number;
  }
}
