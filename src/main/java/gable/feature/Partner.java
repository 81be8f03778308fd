package gable.feature;

import gable.geom.Vec3;
import java.util.Optional;

/**
 * The other half of a joint, as one half needs to know it: for a pin the bore that it goes into,
 * for a bore the pin that goes into it. Print space of the half that asks (millimetres, z up).
 *
 * @param name what the other half is called in reports
 * @param radius radius of the other half
 * @param length free length of the pin or depth of the bore
 * @param web unit direction, square to the axis of the half that asks, in which the web of the pin
 *     stands once both are joined: for a pin its own web, for a bore the slot; empty where none may
 *     be made
 */
public record Partner(String name, double radius, double length, Optional<Vec3> web) {

  /** Refuses sizes that cannot be meant. */
  public Partner {
    if (!(radius > 0 && length > 0)) {
      throw new IllegalArgumentException("no half of a joint: " + radius + ", " + length + " mm");
    }
  }
}
