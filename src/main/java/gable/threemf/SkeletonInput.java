package gable.threemf;

import java.io.InputStream;
import java.util.Arrays;
import java.util.List;

/**
 * The bytes of a part without the pieces that were read already, and the way back from a place in
 * them to the place in the part.
 */
final class SkeletonInput extends InputStream {

  private final byte[] text;
  private final List<int[]> gaps;
  private int at;
  private int gap;

  /**
   * A stream over a part.
   *
   * @param from where to start in the part
   * @param gaps pieces to leave out, ascending, as start and end
   */
  SkeletonInput(byte[] text, int from, List<int[]> gaps) {
    this.text = text;
    this.at = from;
    this.gaps = gaps;
  }

  private int stop() {
    while (gap < gaps.size() && gaps.get(gap)[0] <= at) {
      at = Math.max(at, gaps.get(gap)[1]);
      gap++;
    }
    return gap < gaps.size() ? gaps.get(gap)[0] : text.length;
  }

  @Override
  public int read() {
    int stop = stop();
    return at < stop ? text[at++] & 0xFF : -1;
  }

  @Override
  public int read(byte[] target, int offset, int length) {
    int stop = stop();
    if (at >= stop) {
      return length == 0 ? 0 : -1;
    }
    int count = Math.min(length, stop - at);
    System.arraycopy(text, at, target, offset, count);
    at += count;
    return count;
  }

  /** All that is left. */
  @Override
  public byte[] readAllBytes() {
    Growing.Bytes rest = new Growing.Bytes();
    for (int stop = stop(); at < stop; stop = stop()) {
      rest.add(text, at, stop);
      at = stop;
    }
    return Arrays.copyOf(rest.values(), rest.size());
  }

  /** Place in the part of the {@code count}-th byte of this stream's content. */
  static int placeOf(long count, int from, List<int[]> gaps) {
    long place = from + count;
    for (int[] piece : gaps) {
      if (piece[0] > place) {
        break;
      }
      place += piece[1] - piece[0];
    }
    return (int) place;
  }
}
