package gable.pairs;

import gable.feature.Bore;
import gable.feature.BoreShape;
import gable.feature.EndKind;
import gable.feature.Feature;
import gable.feature.Pin;
import gable.feature.Rim;
import gable.feature.ScrewSeat;
import gable.feature.TipKind;
import gable.geom.Axis;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Turns the features of a part into halves of joints. Pins with a flat or eased tip and bores with
 * an open end can be one; posts with a hole in their tip, threads, polygons, slots and screw seats
 * cannot.
 *
 * @param pins the pins
 * @param bores the bores; pieces on one axis are one
 */
public record Halves(List<PinHalf> pins, List<BoreHalf> bores) {

  /** Copies the lists. */
  public Halves {
    pins = List.copyOf(pins);
    bores = List.copyOf(bores);
  }

  /** The halves among some features. */
  public static Halves of(List<Feature> features) {
    List<PinHalf> pins = new ArrayList<>();
    Map<String, List<Bore>> pieces = new LinkedHashMap<>();
    for (Feature feature : features) {
      if (feature instanceof Pin pin && canBeHalf(pin)) {
        pins.add(half(pin));
      } else if (feature instanceof Bore bore && canBeHalf(bore)) {
        String key = bore.group() == 0 ? bore.id() : "group " + bore.group();
        pieces.computeIfAbsent(key, any -> new ArrayList<>()).add(bore);
      }
    }
    List<BoreHalf> bores =
        pieces.values().stream().map(Halves::half).filter(bore -> !bore.ways().isEmpty()).toList();
    return new Halves(pins, bores);
  }

  private static boolean canBeHalf(Pin pin) {
    return pin.tip() != TipKind.HOLLOW && pin.tip() != TipKind.UNEVEN;
  }

  private static boolean canBeHalf(Bore bore) {
    boolean round = bore.shape() == BoreShape.ROUND || bore.shape() == BoreShape.PEAKED;
    // on a rough mesh both ends may be measured at one place: nothing fits into that
    boolean deep = end(bore, 1, bore.axis()).at() > end(bore, -1, bore.axis()).at();
    return round && deep && ScrewSeat.of(bore).isEmpty();
  }

  private static PinHalf half(Pin pin) {
    Axis axis = pin.axis();
    Axis fromRoot = new Axis(axis.at(-pin.length() / 2), axis.direction());
    return new PinHalf(pin.id(), fromRoot, pin.length(), pin.radius());
  }

  /** One bore of pieces of one size on one axis. */
  private static BoreHalf half(List<Bore> pieces) {
    Bore first = pieces.get(0);
    BoreHalf.End low = end(first, -1, first.axis());
    BoreHalf.End high = end(first, 1, first.axis());
    List<String> ids = new ArrayList<>();
    double inner = Double.POSITIVE_INFINITY;
    for (Bore piece : pieces) {
      ids.add(piece.id());
      inner = Math.min(inner, piece.radius() * Math.cos(Math.PI / piece.facetsPerTurn()));
      for (int side : new int[] {-1, 1}) {
        BoreHalf.End end = end(piece, side, first.axis());
        low = end.at() < low.at() ? end : low;
        high = end.at() > high.at() ? end : high;
      }
    }
    return new BoreHalf(ids, first.axis(), first.radius(), inner, low, high);
  }

  /**
   * An end of a piece, measured along another axis: to where a cone or rounding ends, or a curved
   * mouth stands out farthest; the end of a bore with a slot runs along the slot and back.
   */
  private static BoreHalf.End end(Bore piece, int side, Axis axis) {
    Rim rim = side < 0 ? piece.low() : piece.high();
    boolean open = !rim.kind().isBlind() && rim.kind() != EndKind.NARROWING;
    boolean eased =
        rim.kind() == EndKind.CHAMFERED
            || rim.kind() == EndKind.COUNTERSUNK
            || rim.kind() == EndKind.FILLETED
            || rim.kind() == EndKind.OPEN_CURVED;
    double w = eased ? rim.outerW() : (rim.wMin() + rim.wMax()) / 2;
    return new BoreHalf.End(axis.parameter(piece.axis().at(w)), open);
  }
}
