package gable.pairs;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * All motions that join two parts by as many pins and bores as possible, at least two at once.
 *
 * <p>Only pins and bores of one direction in each part can go together at once. In the planes
 * square to it they are points: two points of one part onto two of the other give the motion, and
 * the others must follow ({@link SpacedSites}). A motion counts only if the faces meet before any
 * pin meets a bottom, and if no pin would stand in the other part's solid.
 */
final class Patterns {

  /** Directions that differ by less than this are one: half a degree, as for mouths. */
  private static final double SAME_DIRECTION = Math.cos(Math.toRadians(0.5));

  private final Part a;
  private final Part b;
  private final Work work;

  /** Counts what was tried, so that results do not depend on the machine. */
  static final class Work {
    private long left;

    Work(long most) {
      left = most;
    }

    boolean isLeft() {
      return left > 0;
    }

    void spend(long count) {
      left -= count;
    }
  }

  Patterns(Part a, Part b, Work work) {
    this.a = a;
    this.b = b;
    this.work = work;
  }

  /** The motions that join most; empty if none joins two. */
  List<Assembly> most(List<Mate> mates) {
    List<Assembly> found = new ArrayList<>();
    for (List<Mate> group : groups(mates)) {
      found.addAll(new SpacedSites(group, work).joinings(this::isFree));
    }
    int most = found.stream().mapToInt(each -> each.mates().size()).max().orElse(0);
    return found.stream().filter(each -> each.mates().size() == most).toList();
  }

  /** Mates with one direction in A and one in B. */
  private static List<List<Mate>> groups(List<Mate> mates) {
    List<List<Mate>> groups = new ArrayList<>();
    for (Mate mate : mates) {
      List<Mate> home =
          groups.stream()
              .filter(group -> isAlong(group.get(0), mate))
              .findFirst()
              .orElseGet(
                  () -> {
                    List<Mate> fresh = new ArrayList<>();
                    groups.add(fresh);
                    return fresh;
                  });
      home.add(mate);
    }
    groups.sort(Comparator.comparingInt((List<Mate> group) -> -group.size()));
    return groups;
  }

  private static boolean isAlong(Mate one, Mate other) {
    return one.directionOfA().dot(other.directionOfA()) >= SAME_DIRECTION
        && one.directionOfB().dot(other.directionOfB()) >= SAME_DIRECTION;
  }

  /** Whether all pins that a motion does not join to a bore stay clear of the other solid. */
  private boolean isFree(Assembly joining) {
    var clash = new Clash(joining);
    return clash.isFree(a.pins(), b.solid(), true) && clash.isFree(b.pins(), a.solid(), false);
  }
}
