package gable.pairs;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * The places of pins and bores of one direction on two parts, and the motions that bring most of
 * them together.
 *
 * <p>A motion that joins all places of the part that has fewer also joins its two places farthest
 * apart, so these are tried first, on every two places of the other part; if that gives such a
 * motion, there are no others of its kind. Only else the other two are tried, as far as the work
 * allows.
 */
final class SpacedSites {

  /** Motions of one size that are looked at: a ring of many pins can be turned in as many ways. */
  private static final int MOST_WAYS = 400;

  /** Places of which every two are tried; the work would not allow more anyway. */
  private static final int MOST_PLACES = 500;

  private final List<Mate> mates;
  private final List<String> few;
  private final List<String> many;
  private final boolean fewOnA;
  private final double[][] fewAt;
  private final double[][] manyAt;
  private final int[][] mateOf;
  private final Patterns.Work work;

  SpacedSites(List<Mate> mates, Patterns.Work work) {
    this.mates = mates;
    this.work = work;
    List<String> a = mates.stream().map(Mate::siteOfA).distinct().sorted().toList();
    List<String> b = mates.stream().map(Mate::siteOfB).distinct().sorted().toList();
    this.fewOnA = a.size() <= b.size();
    this.few = fewOnA ? a : b;
    this.many = fewOnA ? b : a;
    this.fewAt = new double[few.size()][];
    this.manyAt = new double[many.size()][];
    this.mateOf = new int[few.size()][many.size()];
    Map<String, Integer> ofFew = numbers(few);
    Map<String, Integer> ofMany = numbers(many);
    Flat ofA = new Flat(mates.get(0).directionOfA());
    Flat ofB = new Flat(mates.get(0).directionOfB());
    for (int k = 0; k < mates.size(); k++) {
      Mate mate = mates.get(k);
      int i = ofFew.getOrDefault(fewOnA ? mate.siteOfA() : mate.siteOfB(), 0);
      int j = ofMany.getOrDefault(fewOnA ? mate.siteOfB() : mate.siteOfA(), 0);
      mateOf[i][j] = k + 1; // 0 is none
      fewAt[i] = fewOnA ? ofA.of(mate.pointOfA()) : ofB.of(mate.pointOfB());
      manyAt[j] = fewOnA ? ofB.of(mate.pointOfB()) : ofA.of(mate.pointOfA());
    }
  }

  private static Map<String, Integer> numbers(List<String> names) {
    Map<String, Integer> numbers = new HashMap<>();
    names.forEach(name -> numbers.put(name, numbers.size()));
    return numbers;
  }

  /** The motions that join most and pass a test, each with another set of mates. */
  List<Assembly> joinings(Predicate<Assembly> test) {
    List<int[]> bases = bases();
    Set<List<Mate>> seen = new HashSet<>();
    List<Assembly> found = new ArrayList<>();
    for (int[] base : bases) {
      if (!work.isLeft()) {
        break;
      }
      List<Assembly> here = from(base, seen);
      List<Assembly> whole =
          here.stream().filter(each -> each.mates().size() == few.size()).filter(test).toList();
      if (!whole.isEmpty()) {
        return whole;
      }
      here.stream().filter(each -> each.mates().size() < few.size()).forEach(found::add);
    }
    return largest(found, test);
  }

  private static List<Assembly> largest(List<Assembly> found, Predicate<Assembly> test) {
    found.sort(Comparator.comparingInt(each -> -each.mates().size()));
    List<Assembly> passed = new ArrayList<>();
    for (Assembly each : found) {
      boolean smaller = !passed.isEmpty() && each.mates().size() < passed.get(0).mates().size();
      if (smaller || passed.size() >= MOST_WAYS) {
        break;
      }
      if (test.test(each)) {
        passed.add(each);
      }
    }
    return passed;
  }

  /** Two places each, those farthest apart first; of very many places only some are looked at. */
  private List<int[]> bases() {
    List<int[]> bases = new ArrayList<>();
    int step = 1 + few.size() / MOST_PLACES;
    for (int i = 0; i < few.size(); i += step) {
      for (int k = i + 1; k < few.size(); k += step) {
        bases.add(new int[] {i, k});
      }
    }
    bases.sort(
        Comparator.comparingDouble((int[] base) -> -apart(fewAt[base[0]], fewAt[base[1]]))
            .thenComparingInt(base -> base[0])
            .thenComparingInt(base -> base[1]));
    return bases;
  }

  private static double apart(double[] p, double[] q) {
    return Math.hypot(p[0] - q[0], p[1] - q[1]);
  }

  private List<Assembly> from(int[] base, Set<List<Mate>> seen) {
    List<Assembly> found = new ArrayList<>();
    double wanted = apart(fewAt[base[0]], fewAt[base[1]]);
    for (int j = 0; j < many.size(); j++) {
      for (int l = 0; l < many.size(); l++) {
        work.spend(1);
        if (j == l || mateOf[base[0]][j] == 0 || mateOf[base[1]][l] == 0) {
          continue;
        }
        double play = play(base[0], j) + play(base[1], l);
        double spacing = apart(manyAt[j], manyAt[l]);
        if (wanted > play && Math.abs(spacing - wanted) <= play && found.size() < MOST_WAYS) {
          with(base, new int[] {j, l}, seen).ifPresent(found::add);
        }
      }
    }
    return found;
  }

  private double play(int i, int j) {
    Mate mate = mates.get(mateOf[i][j] - 1);
    return Fit.play(mate.pin(), mate.way().bore());
  }

  /** The motion that takes two places to two others, with all other places that it joins. */
  private Optional<Assembly> with(int[] base, int[] onto, Set<List<Mate>> seen) {
    Turn turn =
        Turn.fitting(
            List.of(fewAt[base[0]], fewAt[base[1]]), List.of(manyAt[onto[0]], manyAt[onto[1]]));
    List<Mate> joined = new ArrayList<>();
    boolean[] taken = new boolean[many.size()];
    taken[onto[0]] = true;
    taken[onto[1]] = true;
    work.spend((long) few.size() * many.size());
    for (int i = 0; i < few.size(); i++) {
      int best = i == base[0] ? onto[0] : i == base[1] ? onto[1] : nearest(turn, i, taken);
      if (best >= 0) {
        taken[best] = true;
        joined.add(mates.get(mateOf[i][best] - 1));
      }
    }
    List<Mate> key =
        joined.stream().sorted(Comparator.comparing(Mate::siteOfA)).collect(Collectors.toList());
    return seen.add(key) ? Assembly.of(key) : Optional.empty();
  }

  /** The motion is not yet the best one, so places may be off by twice the play. */
  private int nearest(Turn turn, int i, boolean[] taken) {
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int j = 0; j < many.size(); j++) {
      if (mateOf[i][j] > 0 && !taken[j]) {
        double distance = turn.distance(fewAt[i], manyAt[j]);
        if (distance <= 2 * play(i, j) && distance < least) {
          best = j;
          least = distance;
        }
      }
    }
    return best;
  }
}
