package gable.pairs;

/**
 * Sizes that go together.
 *
 * <p>Diametral clearance as drawn, bore less pin, in millimetres. Common practice for printed parts
 * (several service guides, no single source): press fit −0.1 to 0.1, snug 0.1 to 0.25, sliding 0.3
 * to 0.4 (powder bed 0.5), loose 0.5 to 0.6 (powder bed 0.8), printed in place 0.6 to 1.0 (powder
 * bed 1.2).
 *
 * <p>Both halves have the same nominal diameter if the clearance is below the step from one size to
 * the next. The diameters of parallel pins (ISO 2338:1997, table 1: 2, 2.5, 3, 4, 5, 6, 8, 10, 12,
 * 16, 20) step by a fifth to a third, so the bore is at most a fifth wider than the pin.
 */
final class Fit {

  /** The tightest press fit. */
  static final double TIGHTEST = -0.1;

  /** The loosest fit of parts that are put together. */
  static final double LOOSEST = 0.8;

  /** The loosest fit of parts that are printed in each other. */
  static final double PRINTED_IN_PLACE = 1.2;

  /** The least step of sizes, as a share of the diameter. */
  static final double STEP = 0.2;

  /** The largest step of sizes: what is in position may be this loose if it is thin. */
  static final double LARGE_STEP = 1.0 / 3;

  /**
   * Shortest length of engagement in diameters: a pin is at least this long (common practice, no
   * source).
   */
  static final double SHORTEST = 1.0 / 3;

  /** What measuring on noisy walls may do to a length: the noise that a wall may have. */
  static final double NOISE = 0.03;

  /** Sizes that differ by no more than this are one size. */
  private static final double SAME = 0.02;

  private Fit() {}

  static boolean same(double a, double b) {
    return Math.abs(a - b) <= SAME;
  }

  static double clearance(PinHalf pin, BoreHalf bore) {
    return 2 * (bore.radius() - pin.radius());
  }

  /** Whether a pin and a bore that are not in each other may belong together. */
  static boolean isPlausible(PinHalf pin, BoreHalf bore) {
    return isWithin(pin, bore, Math.min(LOOSEST, STEP * 2 * pin.radius()));
  }

  /** Whether a pin that is in a bore may belong there. */
  static boolean isPlausibleInPlace(PinHalf pin, BoreHalf bore) {
    return isWithin(pin, bore, Math.min(PRINTED_IN_PLACE, LARGE_STEP * 2 * pin.radius()));
  }

  private static boolean isWithin(PinHalf pin, BoreHalf bore, double loosest) {
    double clearance = clearance(pin, bore);
    return clearance >= TIGHTEST - SAME && clearance <= loosest + SAME;
  }

  /** How far an axis may pass the other when both are joined: the play, and noise. */
  static double play(PinHalf pin, BoreHalf bore) {
    return Math.max(0, clearance(pin, bore)) / 2 + NOISE;
  }

  /** How far a pin must go in at least. */
  static double engagement(PinHalf pin) {
    return SHORTEST * 2 * pin.radius();
  }
}
