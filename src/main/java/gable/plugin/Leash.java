package gable.plugin;

import gable.opc.Printable;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Runs code of other people: each call on a thread of its own, and for so long only. A thread that
 * goes on after its time, although it was interrupted, cannot be ended; it is left to itself as a
 * daemon, which does not keep the process alive.
 *
 * <p>Safe for several threads.
 */
final class Leash {

  /** So many threads may be left to themselves before nothing more is asked. */
  private static final int MOST_LOST = 3;

  private static final long GRACE_MS = 200;
  private static final int MOST_CAUSES = 20;

  private final String who;
  private final ClassLoader loader;
  private final Duration patience;
  private final AtomicInteger lost = new AtomicInteger();

  /**
   * A leash.
   *
   * @param who name for threads
   * @param loader where the code comes from
   * @param patience how long one call may take
   */
  Leash(String who, ClassLoader loader, Duration patience) {
    this.who = who;
    this.loader = loader;
    this.patience = patience;
  }

  /** A call did not end well; the message says why, fit to be shown. */
  static final class Failure extends Exception {
    private static final long serialVersionUID = 1;
    private final boolean late;

    private Failure(String message, boolean late) {
      super(message);
      this.late = late;
    }

    /** True if time was the reason, so that another run may go otherwise. */
    boolean isLate() {
      return late;
    }

    /** The message. */
    String why() {
      return String.valueOf(getMessage());
    }
  }

  /**
   * Runs code.
   *
   * @param cutOff called when the code has lost the right to go on
   * @throws Failure if it throws anything, or does not end in time
   */
  <T> T call(Callable<T> code, Runnable cutOff) throws Failure {
    if (lost.get() >= MOST_LOST) {
      throw new Failure("it is not asked any more: " + MOST_LOST + " calls never ended", true);
    }
    FutureTask<T> task = new FutureTask<>(code);
    Thread thread = new Thread(task, "gable plug-in " + who);
    thread.setDaemon(true);
    thread.setContextClassLoader(loader);
    thread.start();
    try {
      return task.get(patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      throw late(task, thread, cutOff);
    } catch (ExecutionException e) {
      throw new Failure(words(e.getCause() == null ? e : e.getCause()), false);
    } catch (InterruptedException e) {
      cutOff.run();
      task.cancel(true);
      Thread.currentThread().interrupt();
      throw new Failure("the run was interrupted", true);
    }
  }

  private Failure late(FutureTask<?> task, Thread thread, Runnable cutOff) {
    cutOff.run();
    task.cancel(true);
    try {
      thread.join(GRACE_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    if (thread.isAlive()) {
      lost.incrementAndGet();
    }
    return new Failure(
        String.format(Locale.ROOT, "it did not answer within %.1f s", patience.toMillis() / 1000.0),
        true);
  }

  /** What was thrown; its text may come from anywhere, and asking for it may fail, too. */
  private static String words(Throwable thrown) {
    String name = thrown.getClass().getName();
    try {
      Throwable first = thrown;
      for (int depth = 0; first.getCause() != null && depth < MOST_CAUSES; depth++) {
        first = first.getCause();
      }
      String message = first.getMessage();
      name = first.getClass().getName();
      return Printable.text(message == null ? name : name + ": " + message);
    } catch (RuntimeException | StackOverflowError e) {
      return Printable.text(name);
    }
  }
}
