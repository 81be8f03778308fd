package gable.pipeline;

import gable.mesh.Aside;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;

/**
 * Work that goes on beside the calling thread until its result is asked for. What it throws is
 * thrown there, as it was: running out of memory must be told from a fault.
 *
 * @param <T> what it gives
 */
final class Beside<T> {

  private final CompletableFuture<T> future;

  private Beside(CompletableFuture<T> future) {
    this.future = future;
  }

  /** Help with what may be done beside, unless there is but one thread. */
  static Aside aside(int threads) {
    return threads < 2 ? Aside.NOBODY : Helping.ANYBODY;
  }

  private enum Helping implements Aside {
    ANYBODY;

    @Override
    public boolean helps() {
      return true;
    }

    @Override
    public <R> Supplier<R> start(Supplier<R> work) {
      return Beside.start(work)::result;
    }
  }

  /** Starts work that reads only what nobody changes meanwhile. */
  static <T> Beside<T> start(Supplier<T> work) {
    return new Beside<>(CompletableFuture.supplyAsync(work));
  }

  /** Waits for the result. */
  T result() {
    try {
      return future.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      if (e.getCause() instanceof RuntimeException failure) {
        throw failure;
      }
      throw e;
    }
  }
}
