package gable.threemf;

import gable.mesh.MeshEdit;
import gable.threemf.MeshSource.TriangleSet;
import java.util.BitSet;
import java.util.TreeMap;

/**
 * Keeps triangle sets true after an edit: triangles that stay are members as before, triangles
 * inside a member are members, triangles on new faces are not. Only sets whose members change are
 * rewritten.
 *
 * <p>Source: core specification 1.4, section 4.1.5 and appendix B.1.2 (every ref before every
 * refrange). Ranges are clipped to the mesh and joined before they are looked at, so that their
 * number and size cost nothing.
 */
final class TriangleSets {

  private TriangleSets() {}

  static void write(byte[] text, MeshObject object, MeshEdit edit, ByteSplices splices) {
    for (TriangleSet set : object.source().sets()) {
      BitSet before = members(set.members(), object.mesh().facetCount());
      BitSet after = after(before, object.mesh().facetCount(), edit);
      if (!after.equals(before)) {
        rewrite(text, set, after, splices);
      }
    }
  }

  private static BitSet members(Entries ranges, int facets) {
    TreeMap<Integer, Integer> joined = new TreeMap<>();
    for (int i = 0; i < ranges.count(); i++) {
      int first = (int) ranges.value(i, 0);
      int last = (int) Math.min(ranges.value(i, 1), facets - 1.0);
      if (first >= 0 && last >= first) {
        joined.merge(first, last, Math::max);
      }
    }
    BitSet members = new BitSet(facets);
    int end = -1;
    for (var range : joined.entrySet()) {
      int from = Math.max(range.getKey(), end + 1);
      if (range.getValue() >= from) {
        members.set(from, range.getValue() + 1);
        end = range.getValue();
      }
    }
    return members;
  }

  private static BitSet after(BitSet before, int facets, MeshEdit edit) {
    BitSet after = (BitSet) before.clone();
    for (int i = 0; i < edit.facetCount(); i++) {
      int place = i < edit.removedCount() ? edit.removed(i) : facets + i - edit.removedCount();
      after.set(place, !edit.onNewFace(i) && before.get(edit.source(i)));
    }
    return after;
  }

  private static void rewrite(byte[] text, TriangleSet set, BitSet members, ByteSplices splices) {
    ListStyle style = ListStyle.of(text, set.span(), "ref");
    StringBuilder single = new StringBuilder();
    StringBuilder ranges = new StringBuilder();
    for (int from = members.nextSetBit(0); from >= 0; ) {
      int end = members.nextClearBit(from);
      if (end - from == 1) {
        single.append(style.separator()).append('<').append(style.name());
        single.append(" index=\"").append(from).append('"').append(style.closing());
      } else {
        ranges.append(style.separator()).append('<').append(style.name());
        ranges.append("range startindex=\"").append(from).append("\" endindex=\"");
        ranges.append(end - 1).append('"').append(style.closing());
      }
      from = members.nextSetBit(end);
    }
    splices.replace(set.span().content(), style.end(), single.append(ranges));
  }
}
