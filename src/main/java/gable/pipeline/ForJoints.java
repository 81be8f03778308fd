package gable.pipeline;

import gable.feature.Feature;
import gable.feature.Surroundings;
import gable.plan.Limits;
import gable.plan.Proposal;
import gable.plan.Reshaper;
import java.util.Optional;

/**
 * A reshaper that nobody asked for by name, and that works on halves of joints only.
 *
 * @param reshaper the reshaper
 */
record ForJoints(Reshaper reshaper) implements Reshaper {

  @Override
  public String name() {
    return reshaper.name();
  }

  @Override
  public Phase phase() {
    return reshaper.phase();
  }

  @Override
  public String summary() {
    return reshaper.summary();
  }

  @Override
  public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
    return around.partner(feature).isPresent()
        ? reshaper.propose(feature, around, limits)
        : Optional.empty();
  }
}
