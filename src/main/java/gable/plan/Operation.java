package gable.plan;

/** What a tool does to the solid. */
public enum Operation {
  /** The solid without the tool. */
  SUBTRACT,
  /** The solid and the tool together. */
  ADD
}
