package gable.verify;

import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Optional;

/**
 * The Euler characteristic V − E + F stays, so no handle appears and no roof opens into another
 * void; and no shell appears or disappears. Needs a surface that stays closed. (A cut that parted a
 * shell and made a handle at once would pass here; its volume would still be proved.)
 */
final class TopologyProof {

  private TopologyProof() {}

  static Optional<Unsound> fault(Patch patch, Components components) {
    int facets = patch.firstStaying() - 2 * patch.firstAdded();
    int change = vertexChange(patch) - 3 * facets / 2 + facets;
    if (change != 0) {
      return Fault.of(
          Proof.TOPOLOGY,
          "the Euler characteristic would change by %d: %s",
          change,
          change < 0 ? "the cut opens into another void or through" : "a part would come loose");
    }
    boolean[] goes = new boolean[patch.firstStaying()];
    boolean[] comes = new boolean[patch.firstStaying()];
    for (int f = 0; f < patch.firstStaying(); f++) {
      (patch.isAdded(f) ? comes : goes)[components.find(f)] = true;
    }
    for (int f = 0; f < patch.firstStaying(); f++) {
      int root = components.find(f);
      if (!goes[root] || !comes[root]) {
        return Fault.of(
            Proof.TOPOLOGY,
            "the shell with %s would %s",
            patch.name(f),
            goes[root] ? "vanish" : "be new");
      }
    }
    return Optional.empty();
  }

  private static int vertexChange(Patch patch) {
    boolean[] was = new boolean[patch.vertexCount()];
    boolean[] willBe = new boolean[patch.vertexCount()];
    for (int f = 0; f < patch.facetCount(); f++) {
      for (int k = 0; k < 3; k++) {
        int v = patch.corner(f, k);
        was[v] |= !patch.isAdded(f);
        willBe[v] |= f >= patch.firstAdded();
      }
    }
    int change = 0;
    for (int v = 0; v < was.length; v++) {
      change += (willBe[v] ? 1 : 0) - (was[v] ? 1 : 0);
    }
    return change;
  }
}
