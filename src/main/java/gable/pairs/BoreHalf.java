package gable.pairs;

import gable.geom.Axis;
import java.util.ArrayList;
import java.util.List;

/**
 * A bore as a joint sees it, in print space of its part (millimetres). Pieces of one bore on one
 * axis, such as two lugs, are one.
 *
 * @param ids ids of its pieces within the part, at least one
 * @param axis its axis
 * @param radius of the circle through its corners
 * @param inner radius of the circle between its flats: the room that there is for a pin
 * @param low its end at the smaller parameter of the axis
 * @param high its end at the larger one
 */
public record BoreHalf(
    List<String> ids, Axis axis, double radius, double inner, End low, End high) {

  /**
   * One end.
   *
   * @param at parameter of the axis: of the outermost mouth if it is open, else of the bottom
   * @param open whether a pin can come in
   */
  public record End(double at, boolean open) {}

  /** Copies the list and refuses sizes that cannot be meant. */
  public BoreHalf {
    ids = List.copyOf(ids);
    if (!(radius > 0 && inner > 0 && high.at > low.at) || ids.isEmpty()) {
      throw new IllegalArgumentException("no bore: " + ids + ", radius " + radius);
    }
  }

  /** Whether both ends are open. */
  boolean isThrough() {
    return low.open && high.open;
  }

  /** The ways into it. */
  List<Way> ways() {
    List<Way> ways = new ArrayList<>();
    if (low.open) {
      ways.add(new Way(this, axis.direction(), axis.at(low.at), !high.open));
    }
    if (high.open) {
      ways.add(new Way(this, axis.direction().times(-1), axis.at(high.at), !low.open));
    }
    return ways;
  }

  double depth() {
    return high.at - low.at;
  }

  /** True if nobody can tell them apart by their sizes. */
  boolean likeBore(BoreHalf other) {
    return Fit.same(radius, other.radius)
        && Fit.same(depth(), other.depth())
        && isThrough() == other.isThrough();
  }
}
