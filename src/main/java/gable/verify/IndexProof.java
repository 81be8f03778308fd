package gable.verify;

import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Optional;

/** The numbers in an edit: everything else may look things up once they are right. */
final class IndexProof {

  private IndexProof() {}

  static Optional<Unsound> fault(WorkMesh before, MeshEdit edit) {
    return removedFault(before, edit).or(() -> pointFault(edit)).or(() -> addedFault(before, edit));
  }

  private static Optional<Unsound> removedFault(WorkMesh before, MeshEdit edit) {
    int last = -1;
    for (int k = 0; k < edit.removedCount(); k++) {
      int facet = edit.removed(k);
      if (facet <= last) {
        return Fault.of(
            Proof.INDICES, "facet %d is taken away after facet %d: not ascending", facet, last);
      }
      if (facet >= before.facetCount() || !before.alive(facet)) {
        return Fault.of(Proof.INDICES, "facet %d is taken away, but there is none", facet);
      }
      last = facet;
    }
    return Optional.empty();
  }

  private static Optional<Unsound> pointFault(MeshEdit edit) {
    for (int k = 0; k < edit.pointCount(); k++) {
      for (int axis = 0; axis < 3; axis++) {
        if (!Double.isFinite(edit.coordinate(k, axis))) {
          return Fault.of(
              Proof.INDICES, "new vertex %d has the coordinate %s", k, edit.coordinate(k, axis));
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<Unsound> addedFault(WorkMesh before, MeshEdit edit) {
    int vertices = before.vertexCount() + edit.pointCount();
    for (int k = 0; k < edit.facetCount(); k++) {
      int a = edit.corner(k, 0);
      int b = edit.corner(k, 1);
      int c = edit.corner(k, 2);
      if (Math.min(a, Math.min(b, c)) < 0 || Math.max(a, Math.max(b, c)) >= vertices) {
        return Fault.of(
            Proof.INDICES, "new facet %d has corners %d %d %d of %d", k, a, b, c, vertices);
      }
      if (a == b || b == c || c == a) {
        return Fault.of(Proof.INDICES, "new facet %d has a corner twice: %d %d %d", k, a, b, c);
      }
      int source = edit.source(k);
      boolean known = source >= 0 && source < before.facetCount() && before.alive(source);
      if (!known || (!edit.onNewFace(k) && !Patch.isRemoved(edit, source))) {
        return Fault.of(
            Proof.INDICES, "new facet %d comes from facet %d, which is not taken away", k, source);
      }
    }
    return Optional.empty();
  }
}
