package gable.feature;

import gable.geom.Axis;

/** Something round that was found on a part, in print space (millimetres, z up). */
public sealed interface Feature permits Bore, Pin {

  /** Name within the part, the same in every run on the same part. */
  String id();

  /** The axis, its origin midway between the ends. */
  Axis axis();

  /** Radius of the circle through the vertices, in millimetres. */
  double radius();

  /** Facets of the wall, ascending. */
  int[] wall();

  /** Length along the axis, in millimetres. */
  double length();

  /** Largest distance of a corner of the wall from the cylinder, in millimetres. */
  double residual();

  /** Number of facets in one turn; for an irregular wall the number that its bends amount to. */
  int facetsPerTurn();

  /** Angle of the axis from the horizontal, 0 to π/2. */
  default double tilt() {
    return axis().tilt();
  }
}
