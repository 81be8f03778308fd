package gable.pipeline;

/** How a feature, or the work of one reshaper on it, ended. */
public enum Outcome {
  /** Changed; in an inspection: would be changed. */
  RESHAPED,
  /** As it was. */
  LEFT
}
