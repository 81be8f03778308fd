package gable.pipeline;

import gable.feature.Partner;
import gable.geom.Vec3;
import gable.pairs.Pair;
import gable.pairs.Pairing;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;

/**
 * What each object is told of the other halves of its joints, and in which joints a web may stand.
 *
 * <p>A feature may be in several joints, since copies of an object are drawn once: a web is allowed
 * only if it is in all of them, in one direction. A web without its slot would block the joint, so
 * joints of which only one half could be made lose theirs; what is allowed only shrinks.
 */
final class Partners {

  /** Directions of one web that differ by less than this are one: half a degree. */
  private static final double SAME = Math.cos(Math.toRadians(0.5));

  /** A feature of a part. */
  private record Key(int part, String id) {}

  private final List<Pair> pairs;
  private final List<ObjectPlace> places;
  private final Set<Pair> denied = new HashSet<>();

  /**
   * Nothing is denied yet.
   *
   * @param pairing what belongs together
   * @param places the objects that the parts are
   */
  Partners(Pairing pairing, List<ObjectPlace> places) {
    this.pairs = pairing.pairs();
    this.places = List.copyOf(places);
    pairs.stream().filter(pair -> pair.webs().isEmpty()).forEach(denied::add);
    spread();
  }

  /** For the id of each feature of a part that is half of a joint, the other half. */
  Map<String, Partner> of(int part) {
    Map<String, Partner> partners = new HashMap<>();
    for (Pair pair : pairs) {
      if (pair.pin().part() == part) {
        partners.putIfAbsent(pair.pinHalf().id(), ofPin(pair));
      }
      if (pair.bore().part() == part) {
        pair.boreHalf().ids().forEach(id -> partners.putIfAbsent(id, ofBore(pair)));
      }
    }
    return partners;
  }

  /** Whether a web is allowed anywhere on a part. */
  boolean hasWebs(int part) {
    return pairs.stream()
        .filter(pair -> !denied.contains(pair))
        .anyMatch(pair -> pair.pin().part() == part || pair.bore().part() == part);
  }

  private Partner ofPin(Pair pair) {
    ObjectPlace place = places.get(pair.bore().part());
    return new Partner(
        place.featureId(pair.boreHalf().ids().get(0), pair.bore().use()),
        pair.boreHalf().radius(),
        pair.boreHalf().high().at() - pair.boreHalf().low().at(),
        web(pair).map(Pair.Webs::ofPin));
  }

  private Partner ofBore(Pair pair) {
    ObjectPlace place = places.get(pair.pin().part());
    return new Partner(
        place.featureId(pair.pinHalf().id(), pair.pin().use()),
        pair.pinHalf().radius(),
        pair.pinHalf().length(),
        web(pair).map(Pair.Webs::ofBore));
  }

  private Optional<Pair.Webs> web(Pair pair) {
    return denied.contains(pair) ? Optional.empty() : pair.webs();
  }

  /** What became of a feature that is half of a joint. */
  enum Half {
    /** It got its web or slot. */
    MADE,
    /** It needs none, since its web is there, or the web of its pin passes anyway. */
    READY,
    /** It has none. */
    NONE
  }

  /**
   * Denies webs where only one half could be made.
   *
   * @param half tells what became of a feature of a part
   * @return the parts that are to be made again
   */
  Set<Integer> denyHalves(BiFunction<Integer, String, Half> half) {
    Set<Pair> before = new HashSet<>(denied);
    for (Pair pair : pairs) {
      boolean web = half.apply(pair.pin().part(), pair.pinHalf().id()) != Half.NONE;
      List<Half> slots =
          pair.boreHalf().ids().stream().map(id -> half.apply(pair.bore().part(), id)).toList();
      boolean whole = !slots.contains(web ? Half.NONE : Half.MADE);
      if (!whole) {
        denied.add(pair);
      }
    }
    spread();
    Set<Integer> again = new HashSet<>();
    for (Pair pair : denied) {
      if (!before.contains(pair)) {
        again.add(pair.pin().part());
        again.add(pair.bore().part());
      }
    }
    return again;
  }

  /** A feature has its web in all of its joints or in none. */
  private void spread() {
    Map<Key, List<Pair>> pairsOf = new LinkedHashMap<>();
    for (Pair pair : pairs) {
      keys(pair).forEach(key -> pairsOf.computeIfAbsent(key, any -> new ArrayList<>()).add(pair));
    }
    boolean changed = true;
    while (changed) {
      changed = false;
      for (Map.Entry<Key, List<Pair>> entry : pairsOf.entrySet()) {
        if (!isOneWeb(entry.getKey(), entry.getValue())) {
          changed |= denied.addAll(entry.getValue());
        }
      }
    }
  }

  private static List<Key> keys(Pair pair) {
    List<Key> keys = new ArrayList<>();
    keys.add(new Key(pair.pin().part(), pair.pinHalf().id()));
    pair.boreHalf().ids().forEach(id -> keys.add(new Key(pair.bore().part(), id)));
    return keys;
  }

  private boolean isOneWeb(Key key, List<Pair> joints) {
    if (joints.stream().anyMatch(denied::contains)) {
      return false;
    }
    Vec3 first = direction(key, joints.get(0));
    return joints.stream().allMatch(joint -> first.dot(direction(key, joint)) >= SAME);
  }

  private static Vec3 direction(Key key, Pair pair) {
    Pair.Webs webs = pair.webs().orElseThrow();
    boolean ofPin = key.part == pair.pin().part() && key.id.equals(pair.pinHalf().id());
    return ofPin ? webs.ofPin() : webs.ofBore();
  }
}
