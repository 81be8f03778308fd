package gable.report;

import gable.geom.Affine3;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.pipeline.ObjectPlace;
import gable.pipeline.ObjectResult;
import java.util.BitSet;
import java.util.List;

/**
 * The surface of one object before and after a run, in print space at its first place.
 *
 * @param result what became of the object
 * @param before its mesh as it was
 * @param edit what was done to the mesh
 */
public record Shape(ObjectResult result, Mesh before, MeshEdit edit) {

  /** The mesh as it is after the run. */
  public Mesh after() {
    return edit.isEmpty() ? before : edit.applied(before);
  }

  /** The surface as it was, or as it is if there was none. */
  Mesh any() {
    return before.facetCount() > 0 ? before : after();
  }

  /** Whether a facet of {@link #after} lies on a face that was not there before, such as a roof. */
  public boolean isNew(int facet) {
    int index = facet - (before.facetCount() - edit.removedCount());
    return index >= 0 && edit.onNewFace(index);
  }

  /** The facets of {@link #before} that are no more. */
  BitSet removed() {
    BitSet facets = new BitSet(before.facetCount());
    for (int index = 0; index < edit.removedCount(); index++) {
      facets.set(edit.removed(index));
    }
    return facets;
  }

  /** The facets of {@link #after} that were not there before. */
  BitSet added() {
    BitSet facets = new BitSet();
    int first = before.facetCount() - edit.removedCount();
    facets.set(first, first + edit.facetCount());
    return facets;
  }

  /** From the first place to each place, the first included. */
  List<Affine3> places() {
    return result.place().uses().stream().map(ObjectPlace.Use::fromFirst).toList();
  }
}
