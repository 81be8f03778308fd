package gable.plan;

import java.util.List;
import java.util.function.Supplier;

/**
 * A feature is to be changed, in the first way of a ladder that can be made and proved.
 *
 * @param ladder the ways, best first, at least one
 * @param otherwise what to do if none of them can: another proposal, which is made only then, or
 *     why the feature stays as it is; the cause found last is added to that
 */
public record Reshape(List<Variant> ladder, Supplier<Proposal> otherwise) implements Proposal {

  /** Refuses an empty ladder. */
  public Reshape {
    ladder = List.copyOf(ladder);
    if (ladder.isEmpty()) {
      throw new IllegalArgumentException("a ladder without a rung");
    }
  }

  /**
   * A change without another proposal.
   *
   * @param ladder the ways, best first, at least one
   * @param otherwise why the feature stays as it is if none of them can be made
   */
  public Reshape(List<Variant> ladder, Reason otherwise) {
    this(ladder, () -> new LeftAlone(otherwise));
  }
}
