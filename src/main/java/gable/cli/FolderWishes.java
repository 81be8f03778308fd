package gable.cli;

import gable.catalogue.Plan;
import gable.pipeline.Settings;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Turns the options of a run over a folder into a plan. */
final class FolderWishes {

  private static final Set<String> GATES = Set.of("left", "rejected", "notice");
  private static final int MOST_THREADS = 1024;
  private static final long MEGABYTE = 1 << 20;
  private static final int USUAL_SECONDS = 600;

  private final Given call;

  FolderWishes(Given call) {
    this.call = call;
  }

  Plan plan(Settings settings) throws WrongCall {
    int cores = Runtime.getRuntime().availableProcessors();
    // the rest is for what grows with the number of models, and for the collector
    long usual = Math.max(1, Runtime.getRuntime().maxMemory() / MEGABYTE * 3 / 4);
    return new Plan(
        settings,
        (int) whole(Grammar.THREADS, cores, MOST_THREADS),
        whole(Grammar.MEMORY, usual, Integer.MAX_VALUE) * MEGABYTE,
        Duration.ofSeconds(whole(Grammar.TIME_LIMIT, USUAL_SECONDS, Integer.MAX_VALUE)),
        call.has(Grammar.REPORTS),
        call.has(Grammar.DRY_RUN));
  }

  /** What makes the run fail. */
  Set<String> gate() throws WrongCall {
    List<String> given = call.values(Grammar.FAIL_ON);
    Set<String> gate = new TreeSet<>();
    for (String word : given) {
      if (!GATES.contains(word.strip())) {
        throw new WrongCall(
            Grammar.FAIL_ON + " is left, rejected or notice, not '" + word.strip() + "'");
      }
      gate.add(word.strip());
    }
    return gate;
  }

  private long whole(String option, long usual, int most) throws WrongCall {
    if (!call.has(option)) {
      return usual;
    }
    String word = call.value(option).orElse("").strip();
    boolean fits = word.matches("[0-9]{1,10}") && Long.parseLong(word) <= most;
    if (!fits || Long.parseLong(word) == 0) {
      throw new WrongCall(option + " is a whole number from 1 on, not '" + word + "'");
    }
    return Long.parseLong(word);
  }
}
