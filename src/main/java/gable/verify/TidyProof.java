package gable.verify;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Optional;

/**
 * An edit that takes out facets without area leaves the surface where it was: every new facet lies
 * in its source and faces as it does, the new facets in one source have its area together, and a
 * facet that goes without a successor had no area. All to within a step: the distance up to which
 * two places are one.
 */
final class TidyProof {

  private final Patch patch;
  private final MeshEdit edit;
  private final double step;

  private TidyProof(Patch patch, MeshEdit edit, double step) {
    this.patch = patch;
    this.edit = edit;
    this.step = step;
  }

  /** Looks at an edit; {@code step} is in millimetres. */
  static Optional<Unsound> fault(Patch patch, MeshEdit edit, double step) {
    return new TidyProof(patch, edit, step).fault();
  }

  private Optional<Unsound> fault() {
    double[] area = new double[edit.removedCount()];
    for (int index = 0; index < edit.facetCount(); index++) {
      int added = patch.firstAdded() + index;
      int source = Patch.indexOfRemoved(edit, edit.source(index));
      if (edit.pointCount() > 0 || edit.onNewFace(index) || source < 0) {
        return Fault.of(Proof.PLACE, "new facet %d is not from an old one", index);
      }
      if (!liesIn(source, added)) {
        return Fault.of(
            Proof.PLACE, "new facet %d does not lie in facet %d", index, edit.source(index));
      }
      area[source] += patch.normal(added).norm() / 2;
    }
    for (int f = 0; f < area.length; f++) {
      // moving each of its edges by a step changes an area by the perimeter times the step at most
      double allowed = perimeter(f) * step + 4 * step * step;
      double missing = patch.normal(f).norm() / 2 - area[f];
      if (Math.abs(missing) > allowed) {
        return Fault.of(
            Proof.AREA, "facet %d lost %.9f mm2 (allowed %.9f)", edit.removed(f), missing, allowed);
      }
    }
    return Optional.empty();
  }

  private boolean liesIn(int source, int added) {
    Vec3 normal = patch.normal(source);
    if (normal.norm() == 0) {
      return patch.normal(added).norm() / 2 <= perimeter(source) * step;
    }
    Vec3 n = normal.unit();
    for (int k = 0; k < 3; k++) {
      Vec3 p = patch.point(added, k);
      if (Math.abs(n.dot(p.minus(patch.point(source, 0)))) > 2 * step
          || beyond(source, n, p) > 2 * step) {
        return false;
      }
    }
    return patch.normal(added).dot(n) >= -perimeter(source) * step;
  }

  private double beyond(int source, Vec3 n, Vec3 p) {
    double out = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      Vec3 from = patch.point(source, k);
      Vec3 along = patch.point(source, (k + 1) % 3).minus(from);
      if (along.norm() > 0) {
        out = Math.max(out, p.minus(from).dot(along.cross(n)) / along.norm());
      }
    }
    return out;
  }

  private double perimeter(int f) {
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      sum += patch.point(f, k).distance(patch.point(f, (k + 1) % 3));
    }
    return sum;
  }
}
