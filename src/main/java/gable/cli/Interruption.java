package gable.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets a run end in order when the process is told to end (Ctrl-C): the run is asked to stop, and
 * the process waits for it, though not for ever.
 */
final class Interruption {

  private static final long PATIENCE_S = 10;

  private final Thread hook;
  private final CountDownLatch over = new CountDownLatch(1);

  Interruption(Progress progress) {
    this.hook = new Thread(() -> end(progress), "stop the run");
    Runtime.getRuntime().addShutdownHook(hook);
  }

  private void end(Progress progress) {
    progress.stop();
    try {
      if (!over.await(PATIENCE_S, TimeUnit.SECONDS)) {
        progress.end();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    progress.tellHowToGoOn();
  }

  /** Lets the process end. */
  void runIsOver() {
    over.countDown();
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      // the process is ending already, and the hook waits for nothing more
    }
  }
}
