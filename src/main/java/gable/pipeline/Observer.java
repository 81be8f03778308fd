package gable.pipeline;

/**
 * Whoever started a run and wants to follow or stop it. Called by the threads of the run, at any
 * time and several at once, and should return soon.
 */
public interface Observer {

  /** One who neither looks nor stops. */
  Observer NONE = new Observer() {};

  /** True once the run should stop; it then ends with a CancellationException. */
  default boolean cancelled() {
    return false;
  }

  /**
   * Some objects are done.
   *
   * @param done how many
   * @param total of how many
   */
  default void progress(int done, int total) {}
}
