package gable.verify;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Optional;

/**
 * Every new facet has an area, and in single precision three corners, an area and the same side
 * out. What is wrong with the facet that a new one is cut from is not held against the new one.
 */
final class AreaProof {

  private final Patch patch;
  private final SinglePrecision single;

  private AreaProof(Patch patch, SinglePrecision single) {
    this.patch = patch;
    this.single = single;
  }

  static Optional<Unsound> fault(Patch patch, SinglePrecision single, MeshEdit edit) {
    var proof = new AreaProof(patch, single);
    for (int f = patch.firstAdded(); f < patch.firstStaying(); f++) {
      int index = patch.id(f);
      int source = Patch.indexOfRemoved(edit, edit.source(index));
      if (hasNoArea(patch, f) && (edit.onNewFace(index) || !hasNoArea(patch, source))) {
        return Fault.of(Proof.AREA, "the corners of %s lie on one line", patch.name(f));
      }
      String defect = proof.defect(f);
      if (!defect.isEmpty() && (edit.onNewFace(index) || proof.defect(source).isEmpty())) {
        return Fault.of(Proof.SINGLE_PRECISION, "in single precision %s %s", patch.name(f), defect);
      }
    }
    return Optional.empty();
  }

  private static boolean hasNoArea(Patch patch, int f) {
    return Sides.collinear(patch.point(f, 0), patch.point(f, 1), patch.point(f, 2));
  }

  private String defect(int facet) {
    int a = patch.corner(facet, 0);
    int b = patch.corner(facet, 1);
    int c = patch.corner(facet, 2);
    Vec3 p = single.point(a);
    Vec3 q = single.point(b);
    Vec3 r = single.point(c);
    if (p.equals(q) || q.equals(r) || r.equals(p)) {
      return "has two corners at one place";
    }
    if (Sides.collinear(p, q, r)) {
      return "has its corners on one line";
    }
    Vec3 exact = single.exactNormal(patch.point(a), patch.point(b), patch.point(c));
    return single.normal(a, b, c).dot(exact) > 0 ? "" : "is turned over";
  }
}
