package gable.fuzz;

import com.sun.management.ThreadMXBean;
import gable.fuzz.Mutator.Mutant;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Feeds mutants to the library, one after the other on one thread. Arguments: how many, the seed of
 * the run, the number of the first, folders with packages to start from (by default {@code
 * fixtures}). Ends with 1 if one was handled wrongly; each such mutant is kept in {@code
 * target/fuzz} as {@code SEED-NUMBER.3mf} beside a text that says what happened, and is made again
 * by {@code 1 SEED NUMBER FOLDERS}.
 */
public final class Fuzz {

  /** Work allowed for one mutant, as bytes that it allocates: what all its checks take together. */
  private static final long MOST_ALLOCATED = 1L << 31;

  private static final Path KEPT = Path.of("target", "fuzz");

  private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
  private final Map<String, Tally> outcomes = new TreeMap<>();
  private final long run;
  private final Mutator mutator;
  private final Oracle oracle;
  private final Watchdog watchdog;
  private long mostAllocated;
  private long mostAllocatedBy;
  private int wrong;

  /** How often something came out, and the processor's time that it took in all. */
  private record Tally(int count, long nanos) {
    Tally plus(Tally other) {
      return new Tally(count + other.count, nanos + other.nanos);
    }
  }

  private Fuzz(long run, Mutator mutator, Oracle oracle) {
    this.run = run;
    this.mutator = mutator;
    this.oracle = oracle;
    this.watchdog = Watchdog.over(Thread.currentThread(), this::hung);
  }

  /** Runs. */
  public static void main(String[] arguments) throws IOException {
    List<String> words = List.of(arguments);
    long count = Long.parseLong(words.isEmpty() ? "10000" : words.get(0));
    long run = words.size() < 2 ? 1 : Long.parseLong(words.get(1));
    long first = words.size() < 3 ? 0 : Long.parseLong(words.get(2));
    List<Path> folders =
        words.size() < 4
            ? List.of(Path.of("fixtures"))
            : words.subList(3, words.size()).stream().map(Path::of).toList();
    System.exit(run(run, first, count, folders, System.out) == 0 ? 0 : 1);
  }

  /** Runs and says how many mutants were handled wrongly. */
  static int run(long run, long first, long count, List<Path> folders, PrintStream log)
      throws IOException {
    Path scratch = KEPT.resolve("scratch-" + ProcessHandle.current().pid());
    Files.createDirectories(scratch);
    List<Seeds.Seed> seeds = Seeds.of(folders);
    Fuzz fuzz = new Fuzz(run, new Mutator(seeds, run), new Oracle(scratch));
    long start = System.nanoTime();
    for (long number = first; number < first + count; number++) {
      fuzz.one(number);
      if ((number - first) % 100_000 == 99_999) {
        log.printf(Locale.ROOT, "%d mutants, %d wrong%n", number - first + 1, fuzz.wrong);
      }
    }
    double seconds = (System.nanoTime() - start) / 1e9;
    log.printf(
        Locale.ROOT,
        "%d mutants of %d packages in %.0f s, seed %d, from number %d: %d wrong%n",
        count,
        seeds.size(),
        seconds,
        run,
        first,
        fuzz.wrong);
    fuzz.print(log);
    Files.delete(scratch);
    return fuzz.wrong;
  }

  private void print(PrintStream log) {
    log.printf(
        Locale.ROOT, "most allocated: %d bytes by number %d%n", mostAllocated, mostAllocatedBy);
    outcomes.entrySet().stream()
        .sorted(Comparator.comparing(e -> -e.getValue().count))
        .forEach(
            e ->
                log.printf(
                    Locale.ROOT,
                    "%9d  %7.3f ms each  %s%n",
                    e.getValue().count,
                    e.getValue().nanos / 1e6 / e.getValue().count,
                    e.getKey()));
  }

  private void one(long number) throws IOException {
    Mutant mutant = mutator.mutant(number);
    watchdog.started(number);
    long before = threads.getCurrentThreadAllocatedBytes();
    long start = threads.getCurrentThreadCpuTime();
    String outcome = "";
    try {
      outcome = oracle.check(mutant.bytes(), Chance.of(~run, number));
      long allocated = threads.getCurrentThreadAllocatedBytes() - before;
      if (allocated > mostAllocated) {
        mostAllocated = allocated;
        mostAllocatedBy = number;
      }
      if (allocated > MOST_ALLOCATED) {
        throw new Soundness.Unsound("it allocated " + allocated + " bytes");
      }
    } catch (Throwable e) { // whatever it is, it is a fault that was found
      wrong++;
      outcome = "WRONG: " + firstLine(e);
      keep(mutant, e);
    }
    Tally tally = new Tally(1, threads.getCurrentThreadCpuTime() - start);
    outcomes.merge(outcome, tally, Tally::plus);
  }

  private static String firstLine(Throwable e) {
    String line = String.valueOf(e.getMessage()).lines().findFirst().orElse("");
    String kind = e instanceof Soundness.Unsound ? "" : e.getClass().getSimpleName() + ": ";
    return kind + line.substring(0, Math.min(100, line.length()));
  }

  private void keep(Mutant mutant, Throwable e) throws IOException {
    StringWriter text = new StringWriter();
    text.write("from " + mutant.seed() + ", faults " + mutant.faults() + '\n');
    e.printStackTrace(new PrintWriter(text, true));
    Files.write(KEPT.resolve(run + "-" + mutant.number() + ".3mf"), mutant.bytes());
    Files.writeString(KEPT.resolve(run + "-" + mutant.number() + ".txt"), text.toString());
  }

  /** Called by the watchdog: keeps the mutant that does not end, and ends the run. */
  private void hung(long number, String where) {
    try {
      Mutant mutant = mutator.mutant(number);
      Files.write(KEPT.resolve(run + "-" + number + ".3mf"), mutant.bytes());
      String text = "from " + mutant.seed() + ", faults " + mutant.faults() + '\n' + where;
      Files.writeString(KEPT.resolve(run + "-" + number + ".txt"), "does not end: " + text);
      System.err.println("mutant " + number + " of seed " + run + " does not end\n" + where);
    } catch (IOException e) {
      System.err.println("mutant " + number + " does not end and cannot be kept: " + e);
    }
    Runtime.getRuntime().halt(3);
  }
}
