package gable.plan;

/** Answer of a {@link Reshaper} about one feature. */
public sealed interface Proposal permits Reshape, LeftAlone {}
