package gable.catalogue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReferenceArray;

/** Some lanes, each of which takes the next model when it has finished one. */
final class Lanes {

  /**
   * Memory that a model needs for each of its bytes on the disk, and in any case: an estimate. A
   * part of a million triangles, 11 MB on the disk, went through in a heap of 512 MiB, which is 47
   * for each byte; files that are packed tighter need more.
   */
  private static final long NEED_PER_BYTE = 80;

  private static final long NEED_IN_ANY_CASE = 16 << 20;

  private final Workshop workshop;
  private final Shelf shelf;
  private final Plan plan;
  private final Follower follower;
  private final Limited limited;
  private final AtomicBoolean failed = new AtomicBoolean();

  Lanes(Workshop workshop, Shelf shelf, Plan plan, Follower follower) {
    this.workshop = workshop;
    this.shelf = shelf;
    this.plan = plan;
    this.follower = follower;
    this.limited = new Limited(plan.memory(), plan.timeLimit(), this::isOver);
  }

  /**
   * What became of one model.
   *
   * @param entry for the journal and the list
   * @param row the same in short
   * @param reused whether it was known from an earlier run
   * @param lasting whether the next run may rely on it
   */
  record Result(Entry entry, Row row, boolean reused, boolean lasting) {}

  private boolean isOver() {
    return failed.get() || follower.stopped();
  }

  /** Deals with all models; the results are in their order, without those that were not reached. */
  List<Result> run(List<ModelFile> models) throws IOException {
    AtomicReferenceArray<Result> results = new AtomicReferenceArray<>(models.size());
    AtomicInteger next = new AtomicInteger();
    ExecutorService pool = Executors.newFixedThreadPool(plan.threads(), Lanes::helper);
    try {
      List<Future<?>> lanes = new ArrayList<>();
      for (int lane = 0; lane < plan.threads(); lane++) {
        lanes.add(pool.submit(() -> lane(models, next, results)));
      }
      for (Future<?> lane : lanes) {
        end(lane);
      }
    } finally {
      pool.shutdownNow();
    }
    List<Result> done = new ArrayList<>();
    for (int index = 0; index < results.length(); index++) {
      Optional.ofNullable(results.get(index)).ifPresent(done::add);
    }
    return done;
  }

  private static Thread helper(Runnable job) {
    Thread thread = new Thread(job, "gable lane");
    thread.setDaemon(true);
    return thread;
  }

  private static void end(Future<?> lane) throws IOException {
    try {
      lane.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof UncheckedIOException failure) {
        throw failure.getCause();
      }
      throw new IllegalStateException("a lane failed", e.getCause());
    }
  }

  private void lane(
      List<ModelFile> models, AtomicInteger next, AtomicReferenceArray<Result> results) {
    for (int index = next.getAndIncrement();
        index < models.size() && !isOver();
        index = next.getAndIncrement()) {
      try {
        Result result = result(models.get(index), index);
        results.set(index, result);
        follower.done(result.row(), result.reused(), models.size());
      } catch (CancellationException e) {
        return;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      } catch (IOException e) {
        failed.set(true);
        throw new UncheckedIOException(e);
      }
    }
  }

  private Result result(ModelFile model, int index) throws InterruptedException, IOException {
    Optional<Entry> known = shelf.known(model);
    if (known.isPresent()) {
      return new Result(known.get(), Row.of(known.get()), true, true);
    }
    Made made = made(model, index);
    boolean lasting = !plan.dryRun() && Shelf.isLasting(made);
    Entry entry = plan.dryRun() ? shelf.entry(model, made, "") : shelf.put(model, made, index);
    return new Result(entry, Row.of(entry), false, lasting);
  }

  private Made made(ModelFile model, int index) throws InterruptedException {
    long need = NEED_IN_ANY_CASE + NEED_PER_BYTE * model.bytes();
    try {
      return limited.run(need, told -> workshop.make(model, index, told));
    } catch (TimeoutException e) {
      return rejected(
          model,
          "time-limit",
          "it took longer than "
              + plan.timeLimit().toSeconds()
              + " s. To do: allow more with --time-limit, or reshape it alone.");
    } catch (ExecutionException e) {
      if (e.getCause() instanceof OutOfMemoryError) {
        return rejected(
            model,
            "out-of-memory",
            "there was not enough memory. To do: fewer --threads, or more memory with java -Xmx.");
      }
      if (e.getCause() instanceof CancellationException stopped) {
        throw stopped;
      }
      return rejected(
          model,
          "fault",
          "a fault of the program stopped it (" + e.getCause() + "). Please report it.");
    }
  }

  private static Made rejected(ModelFile model, String cause, String message) {
    return Made.nothing(Workshop.rejected(model, cause, message), cause);
  }
}
