package gable.feature;

import gable.geom.Axis;

/** Something round that was found on a part, in print space (millimetres, z up). */
public sealed interface Feature permits Bore {

  /** Name within the part, the same in every run on the same part. */
  String id();

  /** The axis. */
  Axis axis();

  /** Radius of the circle through the vertices, in millimetres. */
  double radius();
}
