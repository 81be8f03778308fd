package gable.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Runs the tasks of a file on some threads; results come in the order of the tasks. */
final class Gang {

  private final Work work;
  private final AtomicInteger finished = new AtomicInteger();

  Gang(Work work) {
    this.work = work;
  }

  List<ObjectTask.Done> run(List<ObjectTask> tasks) {
    int threads = Math.min(work.settings().threads(), tasks.size());
    if (threads <= 1) {
      return tasks.stream().map(task -> run(task, tasks.size())).toList();
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads, Gang::helper);
    try {
      List<Future<ObjectTask.Done>> running = new ArrayList<>();
      tasks.forEach(task -> running.add(pool.submit(() -> run(task, tasks.size()))));
      List<ObjectTask.Done> done = new ArrayList<>();
      for (Future<ObjectTask.Done> each : running) {
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

  private ObjectTask.Done run(ObjectTask task, int total) {
    work.goOn();
    ObjectTask.Done done = task.run();
    work.observer().progress(finished.incrementAndGet(), total);
    return done;
  }

  private static ObjectTask.Done outcome(Future<ObjectTask.Done> running) {
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
