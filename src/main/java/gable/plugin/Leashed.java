package gable.plugin;

import gable.feature.Feature;
import gable.feature.Surroundings;
import gable.plan.LeftAlone;
import gable.plan.Limits;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshaper;
import java.util.List;
import java.util.Optional;

/** A reshaper of somebody else, on a leash: whatever it does, the answer is a sensible one. */
final class Leashed implements Reshaper {

  private final Reshaper other;
  private final Leash leash;
  private final Facts facts;

  /**
   * What a reshaper says of itself; asked once.
   *
   * @param name its name
   * @param phase when it works
   * @param summary what it does
   * @param onByItself whether it works without being asked for
   * @param onForJoints whether it does so on halves of joints
   * @param settings names of the settings that it goes by
   */
  record Facts(
      String name,
      Phase phase,
      String summary,
      boolean onByItself,
      boolean onForJoints,
      List<String> settings) {}

  Leashed(Reshaper other, Leash leash, Facts facts) {
    this.other = other;
    this.leash = leash;
    this.facts = facts;
  }

  @Override
  public String name() {
    return facts.name();
  }

  @Override
  public Phase phase() {
    return facts.phase();
  }

  @Override
  public String summary() {
    return facts.summary();
  }

  @Override
  public boolean onByItself() {
    return facts.onByItself();
  }

  @Override
  public boolean onForJoints() {
    return facts.onForJoints();
  }

  @Override
  public List<String> settings() {
    return facts.settings();
  }

  @Override
  public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
    Surroundings lent = around.lent();
    try {
      return Answers.checked(
          leash.call(() -> Answers.whole(other.propose(feature, lent, limits)), lent::withdraw));
    } catch (Leash.Failure e) {
      Reason reason =
          e.isLate()
              ? Reason.reshaperLate(name(), e.why())
              : Reason.reshaperFailed(name(), e.why());
      return Optional.of(new LeftAlone(reason));
    } catch (Answers.Nonsense e) {
      return Optional.of(
          new LeftAlone(Reason.reshaperFailed(name(), String.valueOf(e.getMessage()))));
    } finally {
      lent.withdraw();
    }
  }
}
