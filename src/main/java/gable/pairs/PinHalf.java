package gable.pairs;

import gable.geom.Axis;

/**
 * A pin as a joint sees it, in print space of its part (millimetres).
 *
 * @param id its id within the part
 * @param axis from the root, which is the origin, to the tip
 * @param length free length
 * @param radius of the circle through its corners
 */
public record PinHalf(String id, Axis axis, double length, double radius) {

  /** Refuses sizes that cannot be meant. */
  public PinHalf {
    if (!(length > 0 && radius > 0)) {
      throw new IllegalArgumentException("no pin: radius " + radius + ", length " + length);
    }
  }

  /** True if nobody can tell them apart by their sizes. */
  boolean likePin(PinHalf other) {
    return Fit.same(radius, other.radius) && Fit.same(length, other.length);
  }
}
