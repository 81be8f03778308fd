package gable.pipeline;

import gable.plan.Reshaper;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;

/**
 * What a run has to do, whatever the file.
 *
 * @param settings what the caller decided
 * @param reshapers those that are in use, in the order of their work
 * @param notices what is to be said of the reshapers
 * @param observer who follows the run
 * @param partners other files whose parts go together with those of the file; they stay as they are
 */
record Work(
    Settings settings,
    List<Reshaper> reshapers,
    List<Notice> notices,
    Observer observer,
    List<Path> partners) {

  /** The same for the partners: they are examined alike, but the choice of ids is not for them. */
  Work forPartners() {
    Choice choice = settings.choice();
    Choice all = new Choice(Set.of(), Set.of(), choice.with(), choice.without());
    return new Work(settings.withChoice(all), reshapers, notices, observer, List.of());
  }

  /** Ends the run if its observer wants that. */
  void goOn() {
    if (observer.cancelled()) {
      throw new CancellationException("the run was stopped by its observer");
    }
  }
}
