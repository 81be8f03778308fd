package gable.mesh;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.stream.IntStream;

/** What edits have left of facets of the first mesh, and what they have made of them. */
final class Heirs {

  private final WorkMesh mesh;

  private Heirs(WorkMesh mesh) {
    this.mesh = mesh;
  }

  /** Those of the facets that live, and the pieces of the others that lie within them. */
  static int[] of(WorkMesh mesh, int[] facets) {
    return new Heirs(mesh).find(facets, false);
  }

  /** The same with the new faces made where the facets were cut, and those that these lead to. */
  static int[] andFaces(WorkMesh mesh, int[] facets) {
    Heirs heirs = new Heirs(mesh);
    return heirs.family(heirs.find(facets, true));
  }

  private int[] find(int[] facets, boolean faces) {
    if (Arrays.stream(facets).allMatch(mesh::alive)) {
      return facets.clone();
    }
    IntStream staying = Arrays.stream(facets).filter(mesh::alive);
    IntStream cut =
        IntStream.range(mesh.firstAdded(), mesh.facetCount())
            .filter(facet -> mesh.alive(facet) && (faces || !mesh.isOnNewFace(facet)))
            .filter(facet -> Arrays.binarySearch(facets, mesh.source(facet)) >= 0);
    return IntStream.concat(staying, cut).toArray();
  }

  /** These and all new faces to which one can walk from them over new faces. */
  private int[] family(int[] heirs) {
    BitSet family = new BitSet();
    Deque<Integer> open = new ArrayDeque<>();
    for (int facet : heirs) {
      family.set(facet);
      open.add(facet);
    }
    while (!open.isEmpty()) {
      int facet = open.remove();
      for (int h = 3 * facet; h < 3 * facet + 3; h++) {
        int other = mesh.opposite(h) / 3;
        if (other >= mesh.firstAdded() && mesh.isOnNewFace(other) && !family.get(other)) {
          family.set(other);
          open.add(other);
        }
      }
    }
    return family.stream().toArray();
  }
}
