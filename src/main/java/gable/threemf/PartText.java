package gable.threemf;

import java.nio.charset.StandardCharsets;

/**
 * The bytes of a part and the way from a byte offset to what a person counts: lines from 1, ended
 * by LF, CR LF or CR, and columns from 1 in characters.
 *
 * <p>Line ends are counted once, on the first question, and kept for blocks of {@value #BLOCK}
 * bytes, so that a file with many faults costs no more than one with few.
 */
final class PartText {

  private static final int BLOCK = 1 << 16;
  private static final int LONGEST_LINE = 1 << 20;

  private final byte[] bytes;
  private int[] linesBefore = {};

  PartText(byte[] bytes) {
    this.bytes = bytes;
  }

  /** The bytes themselves; not to be changed. */
  byte[] bytes() {
    return bytes;
  }

  /** Number of the line in which the byte stands. */
  int line(int offset) {
    int to = Math.min(offset, bytes.length);
    if (linesBefore.length == 0) {
      linesBefore = new int[bytes.length / BLOCK + 1];
      for (int block = 1; block < linesBefore.length; block++) {
        linesBefore[block] = linesBefore[block - 1] + lineEnds((block - 1) * BLOCK, block * BLOCK);
      }
    }
    int block = to / BLOCK;
    return 1 + linesBefore[block] + lineEnds(block * BLOCK, to);
  }

  private int lineEnds(int from, int to) {
    int ends = 0;
    for (int i = from; i < to; i++) {
      boolean pair = bytes[i] == '\r' && i + 1 < bytes.length && bytes[i + 1] == '\n';
      ends += bytes[i] == '\n' || (bytes[i] == '\r' && !pair) ? 1 : 0;
    }
    return ends;
  }

  /** Number of the character in its line; 0 in a line that is too long to count. */
  int column(int offset) {
    int to = Math.min(offset, bytes.length);
    int from = to;
    while (from > 0 && bytes[from - 1] != '\n' && bytes[from - 1] != '\r') {
      from--;
      if (to - from > LONGEST_LINE) {
        return 0;
      }
    }
    return 1 + text(from, to).length();
  }

  /** The text between two offsets. */
  String text(int from, int to) {
    return new String(bytes, from, to - from, StandardCharsets.UTF_8);
  }
}
