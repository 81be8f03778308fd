package gable.threemf;

import gable.opc.PartContent;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Replacements of pieces of a text, collected in any order and applied in one pass. All that is not
 * replaced is copied. Pieces must not overlap; several insertions at one place keep their order.
 *
 * <p>Memory: 16 bytes for each replacement and the new text, once.
 */
final class ByteSplices {

  private final byte[] text;
  private final Growing.Ints starts = new Growing.Ints();
  private final Growing.Ints ends = new Growing.Ints();
  private final Growing.Ints insertedEnds = new Growing.Ints();
  private final Growing.Bytes inserted = new Growing.Bytes();

  ByteSplices(byte[] text) {
    this.text = text;
  }

  /** True if nothing is replaced. */
  boolean isEmpty() {
    return starts.size() == 0;
  }

  /** Replaces the bytes from {@code start} to {@code end}. */
  void replace(int start, int end, CharSequence by) {
    replace(start, end, by.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** The same with bytes. */
  void replace(int start, int end, byte[] by) {
    starts.add(start);
    ends.add(end);
    inserted.add(by, 0, by.length);
    insertedEnds.add(inserted.size());
  }

  /** Inserts before the byte at {@code place}. */
  void insert(int place, CharSequence what) {
    replace(place, place, what);
  }

  /** Replacements in the order of the text, as their numbers. */
  private int[] order() {
    long[] keys = new long[starts.size()];
    for (int i = 0; i < keys.length; i++) {
      keys[i] = (long) starts.get(i) << 32 | i;
    }
    Arrays.sort(keys);
    int[] order = new int[keys.length];
    for (int i = 0; i < order.length; i++) {
      order[i] = (int) keys[i];
    }
    return order;
  }

  /** The piece of the text from {@code from} to {@code to} as it is after all replacements. */
  PartContent content(int from, int to) {
    PartContent.Builder content = new PartContent.Builder();
    int at = from;
    for (int splice : order()) {
      int start = starts.get(splice);
      if (start < from || ends.get(splice) > to) {
        continue;
      }
      if (start < at) {
        throw new IllegalStateException("two changes of one place, byte " + start);
      }
      content.add(text, at, start);
      int insert = splice == 0 ? 0 : insertedEnds.get(splice - 1);
      content.add(inserted.values(), insert, insertedEnds.get(splice));
      at = ends.get(splice);
    }
    return content.add(text, at, to).build();
  }
}
