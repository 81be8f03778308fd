package gable.pairs;

import gable.geom.Affine3;
import gable.geom.Axis;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * Pins that are in their bores as the parts of one file are placed: the pin runs along the bore's
 * axis within the play, goes in by a mouth and far enough, and has its root before the mouth.
 */
final class Positions {

  private record PlacedPin(Pair.Place place, PinHalf pin, Axis axis) {}

  private record PlacedWay(Pair.Place place, Way way, Axis into) {}

  private final List<Part> parts;
  private final WebRule rule;

  Positions(List<Part> parts, WebRule rule) {
    this.parts = parts;
    this.rule = rule;
  }

  List<Pair> pairs() {
    List<PlacedPin> pins = new ArrayList<>();
    List<PlacedWay> ways = new ArrayList<>();
    for (int number = 0; number < parts.size(); number++) {
      Part part = parts.get(number);
      for (int use = 0; use < part.copies(); use++) {
        Pair.Place place = new Pair.Place(number, use);
        Affine3 map = part.places().get(use);
        part.pins().forEach(pin -> pins.add(new PlacedPin(place, pin, placed(map, pin))));
        part.bores().stream()
            .flatMap(bore -> bore.ways().stream())
            .forEach(way -> ways.add(new PlacedWay(place, way, placed(map, way))));
      }
    }
    List<Pair> pairs = new ArrayList<>();
    for (PlacedPin pin : pins) {
      for (PlacedWay way : ways) {
        if (isJoined(pin, way)) {
          pairs.add(pair(pin, way));
        }
      }
    }
    return pairs;
  }

  private static Axis placed(Affine3 map, PinHalf pin) {
    return new Axis(map.apply(pin.axis().origin()), map.applyVector(pin.axis().direction()).unit());
  }

  private static Axis placed(Affine3 map, Way way) {
    return new Axis(map.apply(way.mouth()), map.applyVector(way.into()).unit());
  }

  private boolean isJoined(PlacedPin placed, PlacedWay other) {
    PinHalf pin = placed.pin;
    BoreHalf bore = other.way.bore();
    if (!Fit.isPlausibleInPlace(pin, bore)
        || placed.place.equals(other.place)
        || parts.get(placed.place.part()).file() != parts.get(other.place.part()).file()) {
      return false;
    }
    double root = other.into.parameter(placed.axis.origin());
    Vec3 tip = placed.axis.at(pin.length());
    double end = other.into.parameter(tip);
    double in = Math.min(end, bore.depth()) - Math.max(root, 0);
    boolean deepEnough = root <= Mate.seat() && in >= Fit.engagement(pin) - Mate.seat();
    boolean stops = other.way.closed() && end > bore.depth() + Mate.seat();
    double play = Fit.play(pin, bore);
    Vec3 atMouth = placed.axis.at(Math.max(0, -root));
    return deepEnough
        && !stops
        && other.into.distance(tip) <= play
        && other.into.distance(atMouth) <= play;
  }

  private Pair pair(PlacedPin pin, PlacedWay way) {
    Affine3 toBuild = map(pin.place);
    Affine3 toBore = map(way.place).inverse();
    return new Pair(
        pin.place,
        pin.pin,
        way.place,
        way.way.bore(),
        Evidence.POSITION,
        rule.webs(
            pin.pin, way.way.bore(), down -> toBore.applyVector(toBuild.applyVector(down)).unit()));
  }

  private Affine3 map(Pair.Place place) {
    return parts.get(place.part()).places().get(place.use());
  }
}
