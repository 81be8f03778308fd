package gable.pipeline;

import gable.feature.Feature;
import gable.plan.Reason;
import java.util.List;
import java.util.Optional;

/**
 * A feature with what became of it.
 *
 * @param feature the feature as it was found, in print space
 * @param changes one for each reshaper that had something to say about it, in the order of work
 * @param reason why the feature as a whole was left; empty if any reshaper changed it
 */
public record FeatureResult(Feature feature, List<Change> changes, Optional<Reason> reason) {

  private static final Reason NO_RESHAPER =
      new Reason("no-reshaper", "no reshaper that is in use has anything to do with it");

  /** Refuses a reason that contradicts the changes. */
  public FeatureResult {
    changes = List.copyOf(changes);
    boolean changed = changes.stream().anyMatch(c -> c.outcome() == Outcome.RESHAPED);
    if (changed == reason.isPresent()) {
      throw new IllegalArgumentException(feature.id() + ": " + changes + ", reason " + reason);
    }
  }

  /** The result of the reshapers; a feature that all of them left has the reason of the first. */
  public static FeatureResult of(Feature feature, List<Change> changes) {
    boolean changed = changes.stream().anyMatch(c -> c.outcome() == Outcome.RESHAPED);
    Optional<Reason> first = changes.stream().flatMap(c -> c.reason().stream()).findFirst();
    return new FeatureResult(
        feature, changes, changed ? Optional.empty() : first.or(() -> Optional.of(NO_RESHAPER)));
  }

  /** A feature that no reshaper was asked about. */
  public static FeatureResult left(Feature feature, Reason reason) {
    return new FeatureResult(feature, List.of(), Optional.of(reason));
  }

  /** Whether it was changed. */
  public Outcome outcome() {
    return reason.isPresent() ? Outcome.LEFT : Outcome.RESHAPED;
  }
}
