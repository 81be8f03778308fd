package gable.validate;

import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import gable.opc.Severity;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Gathers what is found. Of one kind in one part the first {@value #SHOWN} are kept and the rest
 * counted, so that a file with a million faults costs no more than one with a few.
 */
final class Findings {

  private static final int SHOWN = 20;

  private record Kind(String code, String part) {}

  private static final class Tally {
    private final Rule rule;
    private int count;

    Tally(Rule rule) {
      this.rule = rule;
    }
  }

  private final List<Problem> list = new ArrayList<>();
  private final Map<Kind, Tally> tallies = new LinkedHashMap<>();

  /** Adds a breach of a rule. */
  void add(Rule rule, Element element, String found, String expected) {
    if (more(rule, element.part())) {
      list.add(new Problem(rule, element.place(), found, expected));
    }
  }

  /** Adds a breach of a rule somewhere else than at an element. */
  void add(Rule rule, Place place, String found, String expected) {
    add(new Problem(rule, place, found, expected));
  }

  /** Adds what others have found. */
  void add(Problem problem) {
    if (more(problem.rule(), problem.place().part())) {
      list.add(problem);
    }
  }

  /** Adds what others have found. */
  void addAll(Collection<Problem> problems) {
    problems.forEach(this::add);
  }

  /** Adds why something could not be read. */
  void add(PackageException refusal) {
    addAll(refusal.problems());
  }

  private boolean more(Rule rule, String part) {
    Tally tally = tallies.computeIfAbsent(new Kind(rule.code(), part), key -> new Tally(rule));
    tally.count++;
    return tally.count <= SHOWN;
  }

  /** How often each rule was broken, by its code; what is only discouraged does not count. */
  Map<String, Integer> counts() {
    Map<String, Integer> counts = new TreeMap<>();
    tallies.forEach(
        (kind, tally) -> {
          if (tally.rule.severity() != Severity.NOTE) {
            counts.merge(kind.code, tally.count, Integer::sum);
          }
        });
    return counts;
  }

  /** All that was found, in the order of the checks. */
  List<Problem> list() {
    List<Problem> all = new ArrayList<>(list);
    tallies.forEach(
        (kind, tally) -> {
          if (tally.count > SHOWN) {
            String found = (tally.count - SHOWN) + " more of this kind";
            all.add(new Problem(tally.rule, Place.of(kind.part), found, "none"));
          }
        });
    return all;
  }
}
