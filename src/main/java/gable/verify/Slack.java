package gable.verify;

import gable.geom.Tolerances;

/**
 * How far a new vertex may lie from where it is meant to be.
 *
 * @param grid by rounding to the output grid, in millimetres
 * @param merge by merging with a point that comes too close, in millimetres
 */
record Slack(double grid, double merge) {

  /** Step of written coordinates in print space, in millimetres: the finest promise to a reader. */
  private static final double OUTPUT_STEP = 1e-6;

  /** Half the diagonal of a cell of the grid is the farthest that rounding moves a point. */
  static Slack of(Tolerances tolerances) {
    return new Slack(Math.sqrt(3) / 2 * OUTPUT_STEP, tolerances.mergeDistance());
  }

  double vertex() {
    return grid + merge;
  }
}
