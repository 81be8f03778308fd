package gable.pairs;

import gable.geom.Affine3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** One matching from position over patterns to sizes; see {@link Pairing#of}. Used once. */
final class Matching {

  /** Steps of the search for patterns: seconds at most. */
  private static final long WORK = 20_000_000;

  private record Joined(int a, int b) {}

  private final List<Part> parts;
  private final WebRule rule;
  private final List<Pair> pairs = new ArrayList<>();
  private final List<Doubt> doubts = new ArrayList<>();
  private final Set<Doubt.Of> settled = new HashSet<>();
  private final Set<Joined> joined = new HashSet<>();

  Matching(List<Part> parts, double slope) {
    this.parts = List.copyOf(parts);
    this.rule = new WebRule(slope);
  }

  Pairing run() {
    for (Pair pair : new Positions(parts, rule).pairs()) {
      pairs.add(pair);
      settle(pair);
    }
    patterns();
    new Sizes(parts, this::isOpen, this::isFree).clusters().forEach(this::size);
    Comparator<Pair> byPin =
        Comparator.comparingInt((Pair pair) -> pair.pin().part())
            .thenComparingInt(pair -> pair.pin().use())
            .thenComparingInt(pair -> pair.pinHalf().id().length())
            .thenComparing(pair -> pair.pinHalf().id());
    pairs.sort(byPin.thenComparingInt(pair -> pair.bore().part()).thenComparing(Matching::words));
    return new Pairing(pairs.stream().distinct().toList(), doubts);
  }

  private static String words(Pair pair) {
    return pair.boreHalf().ids() + "." + pair.bore().use();
  }

  private void settle(Pair pair) {
    settled.add(new Doubt.Of(pair.pin().part(), pair.pinHalf().id()));
    settled.add(new Doubt.Of(pair.bore().part(), pair.boreHalf().ids().get(0)));
    joined.add(new Joined(pair.pin().part(), pair.bore().part()));
    joined.add(new Joined(pair.bore().part(), pair.pin().part()));
  }

  /** Whether two parts may still be found to belong together: each once, in one way. */
  private boolean isOpen(int a, int b) {
    boolean apart = a != b || parts.get(a).copies() > 1;
    return apart && !joined.contains(new Joined(a, b));
  }

  /** Mates of two parts whose features are still free. */
  private List<Mate> mates(int a, int b) {
    List<Mate> mates = new ArrayList<>();
    addMates(mates, a, b, true);
    addMates(mates, b, a, false);
    return mates;
  }

  private void addMates(List<Mate> mates, int ofPins, int ofBores, boolean pinOnA) {
    for (PinHalf pin : parts.get(ofPins).pins()) {
      for (BoreHalf bore : parts.get(ofBores).bores()) {
        boolean free = isFree(ofPins, pin.id()) && isFree(ofBores, bore.ids().get(0));
        if (free && Fit.isPlausible(pin, bore)) {
          bore.ways().forEach(way -> mates.add(new Mate(pinOnA, pin, way)));
        }
      }
    }
  }

  private void patterns() {
    List<Claim> claims = new ArrayList<>();
    Patterns.Work work = new Patterns.Work(WORK);
    for (int a = 0; a < parts.size(); a++) {
      for (int b = a; b < parts.size(); b++) {
        if (isOpen(a, b)) {
          claims.addAll(claims(a, b, work));
        }
      }
    }
    List<Integer> sizes =
        claims.stream().map(Matching::size).distinct().sorted(Comparator.reverseOrder()).toList();
    for (int size : sizes) {
      List<Claim> live =
          claims.stream().filter(claim -> size(claim) == size).filter(this::isFree).toList();
      Clusters.of(live).forEach(this::pattern);
    }
  }

  private static int size(Claim claim) {
    return claim.ways().get(0).mates().size();
  }

  private List<Claim> claims(int a, int b, Patterns.Work work) {
    List<Mate> mates = mates(a, b);
    if (mates.size() < 2) {
      return List.of();
    }
    List<Assembly> ways = new Patterns(parts.get(a), parts.get(b), work).most(mates);
    if (ways.isEmpty() && !work.isLeft()) {
      Claim all = new Claim(a, b, List.of(new Assembly(mates, Affine3.IDENTITY)));
      doubt(Doubt.Kind.TOO_MANY, List.of(all));
    }
    return Claim.of(a, b, ways);
  }

  private boolean isFree(int part, String id) {
    return !settled.contains(new Doubt.Of(part, id));
  }

  private boolean isFree(Claim claim) {
    return features(List.of(claim)).stream().noneMatch(settled::contains)
        && !joined.contains(new Joined(claim.a(), claim.b()));
  }

  private static Set<Doubt.Of> features(List<Claim> claims) {
    Set<Doubt.Of> all = new LinkedHashSet<>(Claim.features(claims, true));
    all.addAll(Claim.features(claims, false));
    return all;
  }

  private void pattern(List<Claim> cluster) {
    if (!cluster.stream().allMatch(Claim::isOneJoint)) {
      doubt(Doubt.Kind.SEVERAL_WAYS, cluster);
      return;
    }
    new Assignment(parts, cluster)
        .settled()
        .ifPresentOrElse(
            held -> held.forEach(claim -> accept(claim, Evidence.PATTERN)),
            () -> doubt(Doubt.Kind.SEVERAL, cluster));
  }

  private void size(Sizes.Cluster cluster) {
    if (cluster.kind() != Doubt.Kind.SEVERAL) {
      doubt(cluster.kind(), cluster.claims());
      return;
    }
    new Assignment(parts, cluster.claims())
        .settled()
        .ifPresentOrElse(
            held -> held.forEach(claim -> accept(claim, Evidence.SIZE)),
            () -> doubt(Doubt.Kind.SEVERAL, cluster.claims()));
  }

  private void doubt(Doubt.Kind kind, List<Claim> claims) {
    Doubt doubt = new Doubt(kind, Claim.features(claims, true), Claim.features(claims, false));
    doubts.add(doubt);
    settled.addAll(doubt.pins());
    settled.addAll(doubt.bores());
  }

  private void accept(Claim claim, Evidence by) {
    Assembly way = claim.chosen(rule);
    for (Mate mate : way.mates()) {
      PinHalf pin = mate.pin();
      BoreHalf bore = mate.way().bore();
      Pair pair =
          new Pair(
              new Pair.Place(mate.pinOnA() ? claim.a() : claim.b(), 0),
              pin,
              new Pair.Place(mate.pinOnA() ? claim.b() : claim.a(), 0),
              bore,
              by,
              by == Evidence.SIZE
                  ? rule.websBelow(pin, bore)
                  : rule.webs(pin, bore, down -> way.toBore(mate, down)));
      pairs.add(pair);
      settle(pair);
    }
  }
}
