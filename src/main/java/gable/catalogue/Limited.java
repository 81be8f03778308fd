package gable.catalogue;

import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;

/**
 * Runs jobs within limits: together they need no more memory than there is, by estimate, and none
 * takes longer than allowed. Jobs get their memory in the order in which they ask, so a large one
 * waits for its turn and then is not overtaken.
 *
 * <p>A job that is out of time is told to stop. One that does not listen is abandoned: its thread
 * cannot be ended, but nobody waits for it or takes anything from it any more.
 */
final class Limited {

  private static final long UNIT = 1 << 20;
  private static final long LOOK_MS = 100;
  private static final long GRACE_MS = 2000;

  private final Semaphore memory;
  private final int units;
  private final Duration timeLimit;
  private final BooleanSupplier stopped;

  Limited(long bytes, Duration timeLimit, BooleanSupplier stopped) {
    this.units = (int) Math.max(1, Math.min(Integer.MAX_VALUE, bytes / UNIT));
    this.memory = new Semaphore(units, true);
    this.timeLimit = timeLimit;
    this.stopped = stopped;
  }

  /** A job that is told in the course of its work when to stop. */
  interface Job<T> {
    /** Works; may throw anything once it is told to stop. */
    T run(BooleanSupplier told) throws Exception;
  }

  /**
   * Runs a job.
   *
   * @param bytes memory that it needs by estimate
   * @throws TimeoutException if it is out of time
   * @throws CancellationException if the whole run was stopped
   * @throws ExecutionException if it failed
   */
  <T> T run(long bytes, Job<T> job)
      throws TimeoutException, ExecutionException, InterruptedException {
    int share = (int) Math.max(1, Math.min(units, bytes / UNIT));
    memory.acquire(share);
    try {
      return timed(job);
    } finally {
      memory.release(share);
    }
  }

  private <T> T timed(Job<T> job)
      throws TimeoutException, ExecutionException, InterruptedException {
    AtomicBoolean told = new AtomicBoolean();
    Callable<T> call = () -> job.run(told::get);
    FutureTask<T> task = new FutureTask<>(call);
    Thread thread = new Thread(task, "gable model");
    thread.setDaemon(true);
    thread.start();
    long end = System.nanoTime() + timeLimit.toNanos();
    while (true) {
      try {
        long left = Math.max(0, TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime()));
        return task.get(Math.min(LOOK_MS, left), TimeUnit.MILLISECONDS);
      } catch (TimeoutException e) {
        if (stopped.getAsBoolean() || System.nanoTime() >= end) {
          told.set(true);
          thread.join(GRACE_MS);
          if (stopped.getAsBoolean()) {
            throw new CancellationException("the run was stopped");
          }
          throw e;
        }
      }
    }
  }
}
