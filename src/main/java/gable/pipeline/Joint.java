package gable.pipeline;

import gable.pairs.Evidence;
import java.util.List;

/**
 * A pin with the bore that it belongs to, as results show them.
 *
 * @param pin the pin
 * @param bore the bore
 * @param clearance difference of the diameters as drawn, in millimetres; negative if the pin is
 *     thicker
 * @param leastClearance the same between the corners of the pin and the flats of the bore
 * @param by how it is known that they belong together
 */
public record Joint(Side pin, Side bore, double clearance, double leastClearance, Evidence by) {

  /**
   * One half.
   *
   * @param file number of the file, from 0
   * @param place the object and where it lies
   * @param use at which of its places, from 0; it counts only if the joint is known by position
   * @param locals ids within the object; a bore may have several pieces
   */
  public record Side(int file, ObjectPlace place, int use, List<String> locals) {

    /** Copies the list. */
    public Side {
      locals = List.copyOf(locals);
    }

    /** Ids in the file. */
    public List<String> ids() {
      return locals.stream().map(local -> place.featureId(local, use)).toList();
    }
  }

  /** The half that is not {@code side}. */
  public Side other(Side side) {
    return side.equals(pin) ? bore : pin;
  }
}
