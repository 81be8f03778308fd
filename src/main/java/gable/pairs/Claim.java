package gable.pairs;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Two parts, some features of each, and all ways in which exactly these go together.
 *
 * @param a part that moves
 * @param b part onto which it moves
 * @param ways each with the same features; at least one
 */
record Claim(int a, int b, List<Assembly> ways) {

  /**
   * Features of a part.
   *
   * @param part number of the part
   * @param ids their ids
   */
  record Side(int part, Set<String> ids) {
    boolean touches(Side other) {
      return part == other.part && ids.stream().anyMatch(other.ids::contains);
    }
  }

  Side sideA() {
    return new Side(a, ids(true));
  }

  Side sideB() {
    return new Side(b, ids(false));
  }

  private Set<String> ids(boolean ofA) {
    Set<String> ids = new TreeSet<>();
    ways.get(0).mates().forEach(mate -> ids.add(ofA ? mate.siteOfA() : mate.siteOfB()));
    return ids;
  }

  boolean touches(Side side) {
    return sideA().touches(side) || sideB().touches(side);
  }

  boolean touches(Claim other) {
    return touches(other.sideA()) || touches(other.sideB());
  }

  /** Claims with one set of features each, from ways with any. */
  static List<Claim> of(int a, int b, List<Assembly> ways) {
    List<Claim> claims = new ArrayList<>();
    for (Assembly way : ways) {
      Claim fresh = new Claim(a, b, List.of(way));
      int home = -1;
      for (int k = 0; k < claims.size(); k++) {
        Claim known = claims.get(k);
        boolean same = known.sideA().equals(fresh.sideA()) && known.sideB().equals(fresh.sideB());
        home = same ? k : home;
      }
      if (home < 0) {
        claims.add(fresh);
      } else {
        List<Assembly> more = new ArrayList<>(claims.get(home).ways);
        more.add(way);
        claims.set(home, new Claim(a, b, more));
      }
    }
    return claims;
  }

  /**
   * Whether all ways give the same joints, up to which of several pins of one size goes into which
   * of several bores of one size. A square of four equal pins can be put in in four ways; whichever
   * is taken, the parts end up with the same pins in the same bores.
   */
  boolean isOneJoint() {
    List<Mate> first = ways.get(0).mates();
    for (Assembly way : ways) {
      for (Mate mate : way.mates()) {
        Optional<Mate> same =
            first.stream().filter(each -> each.pin().equals(mate.pin())).findFirst();
        Optional<Mate> there =
            first.stream().filter(each -> each.way().bore().equals(mate.way().bore())).findFirst();
        boolean alike =
            same.isPresent()
                && there.isPresent()
                && same.get().way().bore().likeBore(mate.way().bore())
                && there.get().pin().likePin(mate.pin());
        if (!alike) {
          return false;
        }
      }
    }
    return true;
  }

  /**
   * The way to be taken: that in which webs below the pins come to lie lowest in the bores, since a
   * slot that points down does not meet the roof. Of equal ones the first by the names of mates.
   */
  Assembly chosen(WebRule rule) {
    return ways.stream()
        .min(
            Comparator.comparingLong((Assembly way) -> height(way, rule))
                .thenComparing(Claim::words))
        .orElseThrow();
  }

  /** In millionths, so that rounding does not choose. */
  private static long height(Assembly way, WebRule rule) {
    double sum = 0;
    for (Mate mate : way.mates()) {
      sum +=
          rule.webs(mate.pin(), mate.way().bore(), down -> way.toBore(mate, down))
              .map(webs -> webs.ofBore().z())
              .orElse(0.0);
    }
    return Math.round(sum * 1e6);
  }

  private static String words(Assembly way) {
    StringBuilder words = new StringBuilder();
    way.mates().stream()
        .map(mate -> mate.pin().id() + " " + mate.way().bore().ids().get(0) + " ")
        .sorted()
        .forEach(words::append);
    return words.toString();
  }

  /** Features of several claims. */
  static List<Doubt.Of> features(List<Claim> claims, boolean pins) {
    Set<Doubt.Of> all = new HashSet<>();
    for (Claim claim : claims) {
      for (Assembly way : claim.ways) {
        for (Mate mate : way.mates()) {
          boolean onA = mate.pinOnA() == pins;
          String id = pins ? mate.pin().id() : mate.way().bore().ids().get(0);
          all.add(new Doubt.Of(onA ? claim.a : claim.b, id));
        }
      }
    }
    return all.stream().sorted(Doubt.Of.ORDER).toList();
  }
}
