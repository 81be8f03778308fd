package gable.fuzz;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * Looks whether a thread hangs on one mutant. It counts the processor's time, not that of the
 * clock, so that a busy machine is no hang; and it decides nothing about a result, but stops the
 * run and says where it hangs.
 */
final class Watchdog {

  /** The dearest honest mutants take below two seconds. */
  private static final long MOST_NANOS = 60_000_000_000L;

  private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
  private final Thread watched;
  private final Alarm alarm;
  private volatile long number = -1;

  private Watchdog(Thread watched, Alarm alarm) {
    this.watched = watched;
    this.alarm = alarm;
  }

  /** Told of a mutant that does not end. */
  interface Alarm {
    void hung(long number, String where);
  }

  static Watchdog over(Thread watched, Alarm alarm) {
    Watchdog dog = new Watchdog(watched, alarm);
    Thread thread = new Thread(dog::watch, "watchdog");
    thread.setDaemon(true);
    thread.start();
    return dog;
  }

  /** The next mutant is begun. */
  void started(long mutant) {
    number = mutant;
  }

  private void watch() {
    long seen = -1;
    long since = 0;
    while (watched.isAlive()) {
      long now = threads.getThreadCpuTime(watched.getId());
      if (number != seen) {
        seen = number;
        since = now;
      } else if (now - since > MOST_NANOS) {
        alarm.hung(seen, where());
        return;
      }
      try {
        Thread.sleep(200);
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  private String where() {
    return Arrays.stream(watched.getStackTrace())
        .map(frame -> "  " + frame)
        .collect(Collectors.joining("\n"));
  }
}
