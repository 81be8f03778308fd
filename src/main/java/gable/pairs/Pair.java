package gable.pairs;

import gable.geom.Vec3;
import java.util.Optional;

/**
 * A pin with the bore that it belongs to.
 *
 * @param pin where the pin is
 * @param pinHalf the pin
 * @param bore where the bore is
 * @param boreHalf the bore
 * @param by how that is known
 * @param webs directions of a web below the pin; empty where none may be made
 */
public record Pair(
    Place pin, PinHalf pinHalf, Place bore, BoreHalf boreHalf, Evidence by, Optional<Webs> webs) {

  /**
   * A part at one of its places.
   *
   * @param part number of the part
   * @param use number of its place; 0 unless the pair is known by position
   */
  public record Place(int part, int use) {}

  /**
   * The directions in which a web stands below a pin, as both sides see it, in print space of each
   * part's first place.
   *
   * @param ofPin straight down, square to the pin
   * @param ofBore where that is in the bore once both are joined
   */
  public record Webs(Vec3 ofPin, Vec3 ofBore) {}

  /** Difference of the diameters as drawn, in millimetres; negative if the pin is thicker. */
  public double clearance() {
    return Fit.clearance(pinHalf, boreHalf);
  }

  /** The same between the corners of the pin and the flats of the bore: the least room. */
  public double leastClearance() {
    return 2 * (boreHalf.inner() - pinHalf.radius());
  }
}
