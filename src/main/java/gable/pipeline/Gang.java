package gable.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/** Does the same with each of several things on some threads; results come in their order. */
final class Gang {

  private final Work work;

  Gang(Work work) {
    this.work = work;
  }

  /** Does {@code job} with each; it must be safe to be done with several at once. */
  <T, R> List<R> run(List<T> things, Function<T, R> job) {
    int threads = Math.min(work.settings().threads(), things.size());
    if (threads <= 1) {
      List<R> done = new ArrayList<>();
      things.forEach(thing -> done.add(run(thing, job)));
      return done;
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads, Gang::helper);
    try {
      List<Future<R>> running = new ArrayList<>();
      things.forEach(thing -> running.add(pool.submit(() -> run(thing, job))));
      List<R> done = new ArrayList<>();
      for (Future<R> each : running) {
        done.add(outcome(each));
      }
      return done;
    } finally {
      pool.shutdownNow();
    }
  }

  private static Thread helper(Runnable job) {
    Thread thread = new Thread(job, "gable");
    thread.setDaemon(true);
    return thread;
  }

  private <T, R> R run(T thing, Function<T, R> job) {
    work.goOn();
    return job.apply(thing);
  }

  private static <R> R outcome(Future<R> running) {
    try {
      return running.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      CancellationException stopped = new CancellationException("the run was interrupted");
      stopped.initCause(e);
      throw stopped;
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException failure) {
        throw failure;
      }
      if (e.getCause() instanceof Error failure) {
        throw failure;
      }
      throw new IllegalStateException("a task throws nothing else", e);
    }
  }
}
