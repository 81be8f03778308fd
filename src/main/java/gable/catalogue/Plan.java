package gable.catalogue;

import gable.pipeline.Settings;
import java.time.Duration;

/**
 * What a run over a folder is asked for.
 *
 * @param settings what is to be done to each file
 * @param threads how many files are worked on at once, at least 1; the results do not depend on it
 * @param memory bytes that the files that are worked on may need together, by estimate; a file that
 *     needs more is worked on alone
 * @param timeLimit a file that takes longer is rejected
 * @param reports true if each model gets a report of its own
 * @param dryRun true if nothing is to be written
 */
public record Plan(
    Settings settings,
    int threads,
    long memory,
    Duration timeLimit,
    boolean reports,
    boolean dryRun) {

  /** Refuses what cannot be meant, and has each file worked on by one thread. */
  public Plan {
    if (threads < 1 || memory < 1 || timeLimit.isNegative() || timeLimit.isZero()) {
      throw new IllegalArgumentException(threads + " threads, " + memory + ", " + timeLimit);
    }
    settings = settings.withThreads(1);
  }
}
