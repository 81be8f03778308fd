package gable.pairs;

import gable.geom.Axis;
import gable.geom.Vec3;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Where a web may stand below a pin: straight down, square to the pin, if pin and bore both lie
 * flatter than the slope limit. Upright pins need none, and an upright bore has no side that is
 * below.
 *
 * @param slope limit from the horizontal in radians
 */
record WebRule(double slope) {

  /**
   * The directions for a pair.
   *
   * @param toBore takes a direction at the pin to that at the bore once both are joined
   */
  Optional<Pair.Webs> webs(PinHalf pin, BoreHalf bore, UnaryOperator<Vec3> toBore) {
    if (pin.axis().tilt() >= slope || bore.axis().tilt() >= slope) {
      return Optional.empty();
    }
    Vec3 down = below(pin.axis());
    return Optional.of(new Pair.Webs(down, square(toBore.apply(down), bore.axis())));
  }

  /** The same for a pair whose motion is not known: straight down on both sides. */
  Optional<Pair.Webs> websBelow(PinHalf pin, BoreHalf bore) {
    return webs(pin, bore, down -> below(bore.axis()));
  }

  /** Straight down, square to an axis that does not stand upright. */
  static Vec3 below(Axis axis) {
    return square(Vec3.Z.times(-1), axis);
  }

  /** The part of a direction that is square to an axis; measured axes stray a little. */
  private static Vec3 square(Vec3 direction, Axis axis) {
    Vec3 along = axis.direction().times(direction.dot(axis.direction()));
    return direction.minus(along).unit();
  }
}
