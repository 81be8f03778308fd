package gable.pairs;

import gable.geom.Vec3;

/** The body of a part, in its print space. */
@FunctionalInterface
public interface Solid {

  /** Whether a point lies inside. */
  boolean holds(Vec3 point);
}
