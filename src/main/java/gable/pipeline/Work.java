package gable.pipeline;

import gable.plan.Reshaper;
import java.util.List;
import java.util.concurrent.CancellationException;

/**
 * What a run has to do, whatever the file.
 *
 * @param settings what the caller decided
 * @param reshapers those that are in use, in the order of their work
 * @param notices what is to be said of the reshapers
 * @param observer who follows the run
 */
record Work(Settings settings, List<Reshaper> reshapers, List<Notice> notices, Observer observer) {

  /** Ends the run if its observer wants that. */
  void goOn() {
    if (observer.cancelled()) {
      throw new CancellationException("the run was stopped by its observer");
    }
  }
}
