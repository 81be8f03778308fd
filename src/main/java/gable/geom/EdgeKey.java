package gable.geom;

/** Numbers for edges between numbered vertices, as keys of hash tables. */
public final class EdgeKey {

  /** Odd, so that no two edges get one number: 2⁶⁴ over the golden ratio. */
  private static final long MIX = 0x9E3779B97F4A7C15L;

  private EdgeKey() {}

  /**
   * Unlike for unlike edges and directions. Mixed, since the hash of a plain pair in a long is the
   * same for (2, 3) and (6, 7), and for most other edges of neighbours.
   */
  public static long of(int from, int to) {
    return ((long) from << 32 | to & 0xFFFFFFFFL) * MIX;
  }

  /** The same for both directions. */
  public static long either(int a, int b) {
    return of(Math.min(a, b), Math.max(a, b));
  }
}
