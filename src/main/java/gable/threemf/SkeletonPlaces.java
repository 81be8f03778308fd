package gable.threemf;

import java.util.List;

/**
 * The way from the characters of a skeleton, ascending, to the bytes of its part. Asking for one
 * place after the other costs one walk through the skeleton.
 */
final class SkeletonPlaces {

  private final byte[] text;
  private final List<int[]> gaps;
  private int at;
  private int gap;
  private long characters;

  /**
   * Places in a part.
   *
   * @param gaps pieces that are not in the skeleton, ascending, as start and end
   */
  SkeletonPlaces(byte[] text, List<int[]> gaps) {
    this.text = text;
    this.gaps = gaps;
    if (text.length >= 3 && text[0] == (byte) 0xEF) {
      at = 3; // the byte order mark is no character of the text
    }
  }

  /** Byte offset of a character that does not lie before the last one asked for. */
  int offset(long character) {
    while (characters < character && at < text.length) {
      skipGaps();
      if (at < text.length) {
        int lead = text[at] & 0xFF;
        int length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        characters += length == 4 ? 2 : 1;
        at = Math.min(text.length, at + length);
      }
    }
    skipGaps();
    return at;
  }

  private void skipGaps() {
    while (gap < gaps.size() && gaps.get(gap)[0] <= at) {
      at = Math.max(at, gaps.get(gap)[1]);
      gap++;
    }
  }
}
