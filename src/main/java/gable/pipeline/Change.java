package gable.pipeline;

import gable.plan.Measure;
import gable.plan.Reason;
import java.util.List;
import java.util.Optional;

/**
 * What one reshaper did to one feature.
 *
 * @param by name of the reshaper
 * @param outcome whether it changed the feature
 * @param profile name of the shape that was made; empty if left
 * @param measures numbers about the change; empty if left
 * @param reason why the feature was left; empty if changed
 */
public record Change(
    String by, Outcome outcome, String profile, List<Measure> measures, Optional<Reason> reason) {

  /** Refuses a left feature without a reason, and a reason without need. */
  public Change {
    measures = List.copyOf(measures);
    if (reason.isPresent() != (outcome == Outcome.LEFT)) {
      throw new IllegalArgumentException(by + " " + outcome + ", reason " + reason);
    }
  }

  /** The feature was changed. */
  public static Change reshaped(String by, String profile, List<Measure> measures) {
    return new Change(by, Outcome.RESHAPED, profile, measures, Optional.empty());
  }

  /** The feature stayed as it was. */
  public static Change left(String by, Reason reason) {
    return new Change(by, Outcome.LEFT, "", List.of(), Optional.of(reason));
  }
}
