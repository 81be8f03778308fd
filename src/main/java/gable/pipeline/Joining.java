package gable.pipeline;

import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import java.util.Arrays;
import java.util.BitSet;

/**
 * Adds to an edit that corners at equal places become one vertex in the file. Every triangle keeps
 * its number; vertices that nothing uses any more stay in the list.
 */
final class Joining {

  private final Mesh mesh;
  private final MeshEdit edit;
  private final int[] first;
  private final BitSet taken = new BitSet();
  private final int[] corners;
  private final int[] sources;
  private final boolean[] onNewFace;
  private int count;

  private Joining(Mesh mesh, MeshEdit edit) {
    this.mesh = mesh;
    this.edit = edit;
    this.first = Skin.firstAtSamePlace(mesh);
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      if (repeats(facet)) {
        taken.set(facet);
      }
    }
    int most = taken.cardinality() + edit.facetCount();
    corners = new int[3 * most];
    sources = new int[most];
    onNewFace = new boolean[most];
  }

  /**
   * The edit with the joining.
   *
   * @param mesh the mesh as it is in the file
   * @param edit an edit of it, in its units, that fills every place that it empties
   */
  static MeshEdit added(Mesh mesh, MeshEdit edit) {
    return new Joining(mesh, edit).all();
  }

  private MeshEdit all() {
    BitSet emptied = new BitSet();
    for (int index = 0; index < edit.removedCount(); index++) {
      emptied.set(edit.removed(index));
    }
    taken.or(emptied);
    int next = 0;
    for (int facet = taken.nextSetBit(0); facet >= 0; facet = taken.nextSetBit(facet + 1)) {
      if (emptied.get(facet)) {
        fresh(next++);
      } else {
        joined(facet);
      }
    }
    while (next < edit.facetCount()) {
      fresh(next++);
    }
    double[] points = new double[3 * edit.pointCount()];
    for (int k = 0; k < points.length; k++) {
      points[k] = edit.coordinate(k / 3, k % 3);
    }
    return new MeshEdit(
        taken.stream().toArray(),
        points,
        Arrays.copyOf(corners, 3 * count),
        Arrays.copyOf(sources, count),
        Arrays.copyOf(onNewFace, count));
  }

  private boolean repeats(int facet) {
    for (int k = 0; k < 3; k++) {
      if (first[mesh.corner(facet, k)] != mesh.corner(facet, k)) {
        return true;
      }
    }
    return false;
  }

  private void joined(int facet) {
    for (int k = 0; k < 3; k++) {
      corners[3 * count + k] = first[mesh.corner(facet, k)];
    }
    sources[count++] = facet;
  }

  private void fresh(int index) {
    for (int k = 0; k < 3; k++) {
      int corner = edit.corner(index, k);
      corners[3 * count + k] = corner < first.length ? first[corner] : corner;
    }
    onNewFace[count] = edit.onNewFace(index);
    sources[count++] = edit.source(index);
  }
}
