package gable.plan;

import java.util.List;

/**
 * A feature is to be changed, in the first way of a ladder that can be made and proved.
 *
 * @param ladder the ways, best first, at least one
 * @param otherwise why it stays as it is if none of them can; the cause found last is added to it
 */
public record Reshape(List<Variant> ladder, Reason otherwise) implements Proposal {

  /** Refuses an empty ladder. */
  public Reshape {
    ladder = List.copyOf(ladder);
    if (ladder.isEmpty()) {
      throw new IllegalArgumentException("a ladder without a rung");
    }
  }
}
