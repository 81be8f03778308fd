package gable.feature;

import gable.geom.Box3;
import gable.mesh.Mesh;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Disjoint sets of the vertices of a mesh, each by itself at first. Which vertices are together
 * does not depend on the order in which they were joined; the one with the smallest number stands
 * for its set.
 */
final class VertexSets {

  private final Mesh mesh;

  /** For each vertex one with a smaller number or itself; empty as long as nothing is joined. */
  private int[] parents = new int[0];

  VertexSets(Mesh mesh) {
    this.mesh = mesh;
  }

  /** True if nothing is joined. */
  boolean isEmpty() {
    return parents.length == 0;
  }

  void join(int a, int b) {
    if (parents.length == 0) {
      parents = new int[mesh.vertexCount()];
      Arrays.setAll(parents, vertex -> vertex);
    }
    int one = root(a);
    int other = root(b);
    parents[Math.max(one, other)] = Math.min(one, other);
  }

  private int root(int vertex) {
    int at = vertex;
    while (parents[at] != at) {
      parents[at] = parents[parents[at]];
      at = parents[at];
    }
    return at;
  }

  /** Ends the joining: from now on nothing changes, whoever asks. */
  void settle() {
    for (int vertex = 0; vertex < parents.length; vertex++) {
      parents[vertex] = parents[parents[vertex]]; // of a smaller number, so settled already
    }
  }

  /** The vertex that stands for the set of a vertex, once settled. */
  int first(int vertex) {
    return parents.length == 0 ? vertex : parents[vertex];
  }

  /**
   * The sets, joined with others, of which all points lie in a box whose diagonal is at most {@code
   * most}; settled like these and the others.
   */
  VertexSets within(double most, VertexSets others) {
    Map<Integer, Box3> boxes = new HashMap<>();
    for (int vertex = 0; vertex < parents.length; vertex++) {
      int first = first(vertex);
      if (first != vertex) {
        boxes.put(first, boxes.getOrDefault(first, pointBox(first)).with(mesh.point(vertex)));
      }
    }
    var sets = new VertexSets(mesh);
    for (int vertex = 0; vertex < parents.length; vertex++) {
      int first = first(vertex);
      if (first != vertex && boxes.getOrDefault(first, Box3.EMPTY).diagonal() <= most) {
        sets.join(vertex, first);
      }
      if (others.first(vertex) != vertex) {
        sets.join(vertex, others.first(vertex));
      }
    }
    sets.settle();
    return sets;
  }

  private Box3 pointBox(int vertex) {
    return Box3.EMPTY.with(mesh.point(vertex));
  }
}
