package gable.geom;

/**
 * Numerical slack: what arithmetic, coordinate grids and noise may cost. What an engineer may
 * choose is not here but in the limits of the plan.
 *
 * @param coordinateGrid half the step to which the coordinates of the input are rounded, in
 *     millimetres of print space (measured on the file; at least what single precision loses)
 * @param noise the largest distance, in millimetres, by which a wall vertex may miss its cylinder
 *     and still belong to it (practice: scans and remeshers stray by a few micrometres)
 * @param mergeDistance points closer than this, in millimetres, are one point (practice: above the
 *     spacing of single precision at 500 mm, 3e-5)
 */
public record Tolerances(double coordinateGrid, double noise, double mergeDistance) {

  /** Refuses what is not a positive length. */
  public Tolerances {
    if (!(coordinateGrid > 0 && noise > 0 && mergeDistance > 0)) {
      throw new IllegalArgumentException(
          "no tolerances: " + coordinateGrid + ", " + noise + ", " + mergeDistance);
    }
  }

  /**
   * The tolerances for a model whose coordinates reach as far as {@code reach} millimetres from the
   * origin and are given with a step of {@code step} millimetres (0 if unknown).
   *
   * <p>Single precision has a 24 bit mantissa, so its rounding error is at most reach · 2^-24; many
   * producers hold coordinates that way.
   */
  public static Tolerances forModel(double reach, double step) {
    double single = reach * 0x1p-24;
    double grid = Math.max(Math.max(single, step / 2), 1e-7);
    return new Tolerances(grid, Math.max(0.03, 4 * grid), Math.max(1e-4, 8 * single));
  }
}
