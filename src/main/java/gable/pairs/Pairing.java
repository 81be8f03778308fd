package gable.pairs;

import java.util.List;

/**
 * What belongs together, and what may.
 *
 * @param pairs pairs, in the order of the pins
 * @param doubts what cannot be told
 */
public record Pairing(List<Pair> pairs, List<Doubt> doubts) {

  /** Copies the lists. */
  public Pairing {
    pairs = List.copyOf(pairs);
    doubts = List.copyOf(doubts);
  }

  /**
   * Finds what belongs together. The result depends on the parts alone, and on their order only in
   * the order of its lists.
   *
   * <p>Position comes first, then patterns, those with more pins before those with fewer, then
   * single pins whose size fits one bore and whose bore's size fits no other pin. Copies of a part
   * are alike: four pegs in a build belong to the four bores of a plate, whichever to which.
   *
   * @param parts the parts
   * @param slope slope from the horizontal, in radians, below which pins and bores count as lying,
   *     so that a web may stand below them
   */
  public static Pairing of(List<Part> parts, double slope) {
    return new Matching(parts, slope).run();
  }
}
