package gable.catalogue;

/** Follows a run over a folder, and may stop it. Called by several threads at once. */
public interface Follower {

  /** One who neither looks nor stops. */
  Follower NONE = new Follower() {};

  /** True once the run should stop: what is finished stays, and a next run goes on from there. */
  default boolean stopped() {
    return false;
  }

  /**
   * A model was dealt with.
   *
   * @param row what became of it
   * @param reused whether that was known from an earlier run
   * @param total how many models there are
   */
  default void done(Row row, boolean reused, int total) {}
}
