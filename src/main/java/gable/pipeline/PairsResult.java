package gable.pipeline;

import java.util.List;
import java.util.Optional;

/**
 * Which pins and bores of some files belong together.
 *
 * @param files the files, in the order in which they were named
 * @param joints the joints, within each file and across
 */
public record PairsResult(List<Looked> files, Joints joints) {

  /** Copies the list. */
  public PairsResult {
    files = List.copyOf(files);
  }

  /**
   * A file that was looked at.
   *
   * @param source the file
   * @param refusal why nothing of it could be examined, if so
   * @param notices what else is to be known of it
   * @param nothing whether it was read, but no object could be examined
   */
  public record Looked(
      Source source, Optional<Notice> refusal, List<Notice> notices, boolean nothing) {

    /** Copies the list. */
    public Looked {
      notices = List.copyOf(notices);
    }
  }
}
