package gable.pairs;

import gable.feature.ClearanceHole;
import gable.geom.Affine3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Single pins and bores that are told by their sizes alone.
 *
 * <p>Two parts go together in one way, so two pins of one part that fit two bores of another, but
 * that no motion joins, do not belong together. And a bore through a part with the diameter of a
 * medium or coarse clearance hole for a screw of the pin's own nominal diameter more likely is
 * that.
 */
final class Sizes {

  /**
   * Claims that hang together.
   *
   * @param kind why they hold nothing; {@code SEVERAL} if that is open
   * @param claims the claims
   */
  record Cluster(Doubt.Kind kind, List<Claim> claims) {}

  /** Whether two parts may be asked about. */
  interface Open {
    boolean areOpen(int a, int b);
  }

  /** Features that somebody else has settled. */
  interface Free {
    boolean isFree(int part, String id);
  }

  private final List<Part> parts;
  private final Open open;
  private final Free free;

  Sizes(List<Part> parts, Open open, Free free) {
    this.parts = parts;
    this.open = open;
    this.free = free;
  }

  List<Cluster> clusters() {
    List<Claim> claims = new ArrayList<>();
    for (int a = 0; a < parts.size(); a++) {
      for (int b = a; b < parts.size(); b++) {
        if (open.areOpen(a, b)) {
          add(claims, a, b, true);
          if (a != b) {
            add(claims, b, a, false);
          }
        }
      }
    }
    List<List<Claim>> clusters = Clusters.of(claims);
    Map<List<Integer>, Integer> clustersOf = new HashMap<>();
    for (List<Claim> cluster : clusters) {
      couples(cluster).forEach(couple -> clustersOf.merge(couple, 1, Integer::sum));
    }
    List<Cluster> found = new ArrayList<>();
    for (List<Claim> cluster : clusters) {
      boolean again =
          couples(cluster).stream().anyMatch(couple -> clustersOf.getOrDefault(couple, 0) > 1);
      found.add(new Cluster(kind(cluster, again), cluster));
    }
    return found;
  }

  private void add(List<Claim> claims, int ofPins, int ofBores, boolean pinOnA) {
    int a = pinOnA ? ofPins : ofBores;
    int b = pinOnA ? ofBores : ofPins;
    for (PinHalf pin : parts.get(ofPins).pins()) {
      for (BoreHalf bore : parts.get(ofBores).bores()) {
        if (free.isFree(ofPins, pin.id())
            && free.isFree(ofBores, bore.ids().get(0))
            && Fit.isPlausible(pin, bore)) {
          bore.ways().stream()
              .map(way -> new Mate(pinOnA, pin, way))
              .filter(Mate::isSeated)
              .findFirst()
              .map(mate -> new Assembly(List.of(mate), Affine3.IDENTITY))
              .ifPresent(joining -> claims.add(new Claim(a, b, List.of(joining))));
        }
      }
    }
  }

  private static Set<List<Integer>> couples(List<Claim> cluster) {
    Set<List<Integer>> couples = new HashSet<>();
    cluster.forEach(claim -> couples.add(List.of(claim.a(), claim.b())));
    return couples;
  }

  private static Doubt.Kind kind(List<Claim> cluster, boolean again) {
    if (again || couples(cluster).stream().anyMatch(couple -> isMany(cluster, couple))) {
      return Doubt.Kind.SPACING;
    }
    return cluster.stream().anyMatch(Sizes::isScrews) ? Doubt.Kind.SCREW : Doubt.Kind.SEVERAL;
  }

  /** Whether two parts have two pins and two bores, or more, in a cluster. */
  private static boolean isMany(List<Claim> cluster, List<Integer> couple) {
    List<Claim> ofCouple =
        cluster.stream().filter(claim -> List.of(claim.a(), claim.b()).equals(couple)).toList();
    return Claim.features(ofCouple, true).size() > 1 && Claim.features(ofCouple, false).size() > 1;
  }

  private static boolean isScrews(Claim claim) {
    Mate mate = claim.ways().get(0).mates().get(0);
    BoreHalf bore = mate.way().bore();
    return bore.isThrough()
        && ClearanceHole.of(2 * bore.radius())
            .filter(hole -> hole.fit() != ClearanceHole.Fit.FINE)
            .filter(hole -> Fit.same(hole.thread(), 2 * mate.pin().radius()))
            .isPresent();
  }
}
