package gable.verify;

import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * The surface stays closed and stays a surface. Needs a closed mesh before.
 *
 * <p>Afterwards every edge of a new facet belongs to exactly one other facet, in the opposite
 * direction; every edge that lost a facet has a new one; no edge has more than two. Around every
 * vertex that the edit touches the facets form one fan, or no more fans than before where there
 * were several.
 */
final class ClosedProof {

  private final Patch patch;
  private final LongTable before;
  private final LongTable after;

  private ClosedProof(Patch patch) {
    this.patch = patch;
    this.before = new LongTable(6 * patch.firstStaying());
    this.after = new LongTable(6 * patch.firstStaying());
  }

  static Optional<Unsound> fault(Patch patch) {
    var proof = new ClosedProof(patch);
    return proof.doubledFault().or(proof::openFault).or(proof::fanFault);
  }

  private boolean wasThere(int facet) {
    return !patch.isAdded(facet);
  }

  private boolean willBeThere(int facet) {
    return facet >= patch.firstAdded();
  }

  private int from(int halfEdge) {
    return patch.corner(halfEdge / 3, halfEdge % 3);
  }

  private int to(int halfEdge) {
    return patch.corner(halfEdge / 3, (halfEdge + 1) % 3);
  }

  /** Enters all half-edges at touched vertices; a second one in the same direction is a fault. */
  private Optional<Unsound> doubledFault() {
    for (int f = 0; f < patch.facetCount(); f++) {
      if (!patch.touches(f)) {
        continue;
      }
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        long key = LongTable.pair(from(h), to(h));
        if (wasThere(f)) {
          before.putIfAbsent(key, h);
        }
        int other = willBeThere(f) ? after.putIfAbsent(key, h) : LongTable.NONE;
        if (other != LongTable.NONE) {
          return Fault.of(
              Proof.CLOSED,
              "%s and %s have the edge %s in the same direction",
              patch.name(other / 3),
              patch.name(f),
              edge(h));
        }
      }
    }
    return Optional.empty();
  }

  private Optional<Unsound> openFault() {
    for (int f = 0; f < patch.firstStaying(); f++) {
      for (int h = 3 * f; h < 3 * f + 3; h++) {
        long back = LongTable.pair(to(h), from(h));
        if (patch.isAdded(f)) {
          if (after.get(back) == LongTable.NONE) {
            return Fault.of(Proof.CLOSED, "%s has an open edge %s", patch.name(f), edge(h));
          }
        } else {
          int across = before.get(back) / 3;
          // the new facet may also come from the other side: that it fits is shown by its own edge
          int now = after.get(LongTable.pair(from(h), to(h)));
          if (patch.isStaying(across) && (now == LongTable.NONE || !patch.isAdded(now / 3))) {
            return Fault.of(
                Proof.CLOSED,
                "%s loses its neighbour at the edge %s and gets none",
                patch.name(across),
                edge(h));
          }
        }
      }
    }
    return Optional.empty();
  }

  private Optional<Unsound> fanFault() {
    int[] fansBefore = fans(before, this::wasThere);
    int[] fansAfter = fans(after, this::willBeThere);
    for (int v = 0; v < patch.vertexCount(); v++) {
      if (patch.isTouched(v) && fansAfter[v] > Math.max(1, fansBefore[v])) {
        return Fault.of(
            Proof.FANS,
            "the facets around vertex %d would form %d fans instead of %d",
            patch.vertexId(v),
            fansAfter[v],
            Math.max(1, fansBefore[v]));
      }
    }
    return Optional.empty();
  }

  /** Number of fans that some of the facets form at each touched vertex. */
  private int[] fans(LongTable table, IntPredicate there) {
    int[] fans = new int[patch.vertexCount()];
    boolean[] seen = new boolean[3 * patch.facetCount()];
    for (int f = 0; f < patch.facetCount(); f++) {
      for (int h = 3 * f; h < 3 * f + 3 && there.test(f); h++) {
        if (patch.isTouched(from(h)) && !seen[h]) {
          fans[from(h)]++;
          walk(h, table, seen);
        }
      }
    }
    return fans;
  }

  /** Marks the half-edges that leave the same vertex, going round from one. */
  private void walk(int start, LongTable table, boolean[] seen) {
    int h = start;
    while (h != LongTable.NONE && !seen[h]) {
      seen[h] = true;
      int before = h / 3 * 3 + (h % 3 + 2) % 3;
      h = table.get(LongTable.pair(from(h), from(before)));
    }
  }

  private String edge(int h) {
    return patch.vertexId(from(h)) + "-" + patch.vertexId(to(h));
  }
}
