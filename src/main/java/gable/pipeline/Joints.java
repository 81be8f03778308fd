package gable.pipeline;

import gable.pairs.Doubt;
import gable.pairs.Evidence;
import gable.pairs.Pair;
import gable.pairs.Pairing;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.Stream;

/**
 * The joints of a file, or of several together.
 *
 * @param pairs what belongs together
 * @param doubts what may belong together, but cannot be told
 */
public record Joints(List<Joint> pairs, List<Uncertain> doubts) {

  /** None. */
  public static final Joints NONE = new Joints(List.of(), List.of());

  /** Copies the lists. */
  public Joints {
    pairs = List.copyOf(pairs);
    doubts = List.copyOf(doubts);
  }

  /**
   * Pins and bores that may belong together.
   *
   * @param kind why it cannot be told
   * @param pins the pins
   * @param bores the bores
   */
  public record Uncertain(Doubt.Kind kind, List<Joint.Side> pins, List<Joint.Side> bores) {

    /** Copies the lists. */
    public Uncertain {
      pins = List.copyOf(pins);
      bores = List.copyOf(bores);
    }
  }

  /**
   * A joint seen from one of its halves.
   *
   * @param joint the joint
   * @param other the other half
   */
  public record Seen(Joint joint, Joint.Side other) {}

  /** Those in which the first file has a part. */
  Joints ofOwn() {
    return new Joints(
        pairs.stream().filter(pair -> pair.pin().file() == 0 || pair.bore().file() == 0).toList(),
        doubts.stream()
            .filter(
                doubt ->
                    Stream.concat(doubt.pins().stream(), doubt.bores().stream())
                        .anyMatch(side -> side.file() == 0))
            .toList());
  }

  /** The joints of which a feature of the first file is a half, at one place of its object. */
  public List<Seen> of(ObjectPlace place, int use, String local) {
    List<Seen> seen = new ArrayList<>();
    for (Joint joint : pairs) {
      Stream.of(joint.pin(), joint.bore())
          .filter(side -> side.file() == 0)
          .filter(side -> side.locals().contains(local) && side.place().equals(place))
          .filter(side -> joint.by() != Evidence.POSITION || side.use() == use)
          .forEach(side -> seen.add(new Seen(joint, joint.other(side))));
    }
    return seen;
  }

  /** The same at whatever place of the object. */
  public List<Seen> of(ObjectPlace place, String local) {
    List<Seen> seen = new ArrayList<>();
    for (int use = 0; use < place.uses().size(); use++) {
      of(place, use, local).stream().filter(each -> !seen.contains(each)).forEach(seen::add);
    }
    return seen;
  }

  /**
   * A matching as results show it.
   *
   * @param fileOf number of the file of a part
   * @param placeOf the object of a part
   */
  static Joints of(Pairing pairing, IntFunction<Integer> fileOf, IntFunction<ObjectPlace> placeOf) {
    List<Joint> joints = new ArrayList<>();
    for (Pair pair : pairing.pairs()) {
      int pin = pair.pin().part();
      int bore = pair.bore().part();
      joints.add(
          new Joint(
              new Joint.Side(
                  fileOf.apply(pin),
                  placeOf.apply(pin),
                  pair.pin().use(),
                  List.of(pair.pinHalf().id())),
              new Joint.Side(
                  fileOf.apply(bore),
                  placeOf.apply(bore),
                  pair.bore().use(),
                  pair.boreHalf().ids()),
              pair.clearance(),
              pair.leastClearance(),
              pair.by()));
    }
    List<Joints.Uncertain> doubts = new ArrayList<>();
    for (Doubt doubt : pairing.doubts()) {
      doubts.add(
          new Joints.Uncertain(
              doubt.kind(),
              sides(doubt.pins(), fileOf, placeOf),
              sides(doubt.bores(), fileOf, placeOf)));
    }
    return new Joints(joints, doubts);
  }

  private static List<Joint.Side> sides(
      List<Doubt.Of> features, IntFunction<Integer> fileOf, IntFunction<ObjectPlace> placeOf) {
    return features.stream()
        .map(
            of ->
                new Joint.Side(
                    fileOf.apply(of.part()), placeOf.apply(of.part()), 0, List.of(of.id())))
        .toList();
  }
}
