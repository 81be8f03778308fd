package gable.threemf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
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

  /**
   * Writes the piece of the text from {@code from} to {@code to} as it is after all replacements.
   */
  void write(int from, int to, OutputStream target) throws IOException {
    int at = from;
    for (int splice : order()) {
      if (starts.get(splice) < from || ends.get(splice) > to) {
        continue;
      }
      if (starts.get(splice) < at) {
        throw new IllegalStateException("two changes of one place, byte " + starts.get(splice));
      }
      target.write(text, at, starts.get(splice) - at);
      int insert = splice == 0 ? 0 : insertedEnds.get(splice - 1);
      target.write(inserted.values(), insert, insertedEnds.get(splice) - insert);
      at = ends.get(splice);
    }
    target.write(text, at, to - at);
  }

  /** The piece as an array. */
  byte[] bytes(int from, int to) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(to - from + 64);
    try {
      write(from, to, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** Length of the whole text after all replacements. */
  long length() {
    long length = text.length + (long) inserted.size();
    for (int i = 0; i < starts.size(); i++) {
      length -= ends.get(i) - starts.get(i);
    }
    return length;
  }
}
