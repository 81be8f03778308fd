package gable.plan;

/**
 * A feature stays as it is.
 *
 * @param reason why
 */
public record LeftAlone(Reason reason) implements Proposal {}
