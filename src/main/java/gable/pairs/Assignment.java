package gable.pairs;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Settles claims that share features. One side of all, the hub, must be the same features of the
 * same part or of its copies; the other sides share nothing. If there are as many copies of the hub
 * as there are others, each other gets one, whichever: copies are alike. The same holds if the
 * others are one object that lies in several ways, since it is drawn once.
 */
final class Assignment {

  private record Kind(Object family, Set<String> ids) {}

  private final List<Part> parts;
  private final List<Claim> claims;

  Assignment(List<Part> parts, List<Claim> claims) {
    this.parts = parts;
    this.claims = claims;
  }

  /** The claims that hold; empty if that cannot be told. */
  Optional<List<Claim>> settled() {
    Claim first = claims.get(0);
    return around(kind(first.sideA())).or(() -> around(kind(first.sideB())));
  }

  private Kind kind(Claim.Side side) {
    return new Kind(parts.get(side.part()).family(), side.ids());
  }

  private Optional<List<Claim>> around(Kind kind) {
    Map<Claim, Claim.Side> hubOf = new LinkedHashMap<>();
    Set<Claim.Side> others = new LinkedHashSet<>();
    for (Claim claim : claims) {
      boolean onA = kind(claim.sideA()).equals(kind);
      if (!onA && !kind(claim.sideB()).equals(kind)) {
        return Optional.empty();
      }
      hubOf.put(claim, onA ? claim.sideA() : claim.sideB());
      others.add(onA ? claim.sideB() : claim.sideA());
    }
    Set<Claim.Side> hubs = new LinkedHashSet<>(hubOf.values());
    boolean alone = hubs.size() == 1 && others.size() == 1;
    boolean oneObject = hubs.size() == 1 && others.stream().map(this::kind).distinct().count() == 1;
    boolean enough = copies(hubs) >= copies(others);
    return areApart(others) && (alone || oneObject || enough)
        ? Optional.of(shared(hubOf, others))
        : Optional.empty();
  }

  private static boolean areApart(Set<Claim.Side> sides) {
    List<Claim.Side> all = List.copyOf(sides);
    for (int i = 0; i < all.size(); i++) {
      for (int k = i + 1; k < all.size(); k++) {
        if (all.get(i).touches(all.get(k))) {
          return false;
        }
      }
    }
    return true;
  }

  private long copies(Set<Claim.Side> sides) {
    return sides.stream().mapToLong(side -> parts.get(side.part()).copies()).sum();
  }

  /** One claim for each other side: on the hub that has most copies left. */
  private List<Claim> shared(Map<Claim, Claim.Side> hubOf, Set<Claim.Side> others) {
    Map<Claim.Side, Long> left = new LinkedHashMap<>();
    hubOf.values().forEach(hub -> left.put(hub, (long) parts.get(hub.part()).copies()));
    List<Claim> chosen = new ArrayList<>();
    for (Claim.Side other : others) {
      Optional<Claim> best = Optional.empty();
      for (Map.Entry<Claim, Claim.Side> entry : hubOf.entrySet()) {
        Claim claim = entry.getKey();
        boolean fits = claim.sideA().equals(other) || claim.sideB().equals(other);
        long most = best.map(b -> left.getOrDefault(hubOf.get(b), 0L)).orElse(Long.MIN_VALUE);
        if (fits && left.getOrDefault(entry.getValue(), 0L) > most) {
          best = Optional.of(claim);
        }
      }
      Claim claim = best.orElseThrow();
      Claim.Side hub = hubOf.getOrDefault(claim, other);
      left.merge(hub, -(long) parts.get(other.part()).copies(), Long::sum);
      chosen.add(claim);
    }
    return chosen;
  }
}
