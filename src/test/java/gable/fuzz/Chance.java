package gable.fuzz;

import java.util.List;
import java.util.SplittableRandom;

/** Seeded choices; the same seed gives the same choices on every machine. */
final class Chance {

  /** An odd number far from round; spreads neighbouring numbers (Weyl sequence, golden ratio). */
  private static final long SPREAD = 0x9E3779B97F4A7C15L;

  private final SplittableRandom random;

  private Chance(SplittableRandom random) {
    this.random = random;
  }

  /** The choices of one mutant of a run, independent of all others. */
  static Chance of(long seed, long mutant) {
    return new Chance(new SplittableRandom(seed * SPREAD ^ mutant));
  }

  /** A number from 0 to below the bound. */
  int below(int bound) {
    return random.nextInt(bound);
  }

  /** A number from 0 to below the bound, small ones more often. */
  int small(int bound) {
    double even = random.nextDouble();
    return (int) (bound * even * even * even);
  }

  /** A number from -1 to below 1. */
  double signed() {
    return 2 * random.nextDouble() - 1;
  }

  /** Any 64 bits. */
  long bits() {
    return random.nextLong();
  }

  /** True once in so many times. */
  boolean oneIn(int times) {
    return random.nextInt(times) == 0;
  }

  /** One of them. */
  <T> T of(List<T> all) {
    return all.get(random.nextInt(all.size()));
  }

  /** One of them. */
  @SafeVarargs
  final <T> T either(T... all) {
    return all[random.nextInt(all.length)];
  }
}
