package gable.pipeline;

import gable.plan.Reason;
import java.util.List;

/** What became of one file. */
public sealed interface FileResult {

  /** The input. */
  Source source();

  /** Objects in the order of the build, then those that are not in it. */
  List<ObjectResult> objects();

  /** What is to be said about the file as a whole. */
  List<Notice> notices();

  /** Which pins and bores belong together. */
  Joints joints();

  /** Whether time had a say in it, so that another run may end otherwise. */
  default boolean dependsOnTime() {
    return notices().stream().anyMatch(notice -> notice.code().equals(Reason.RESHAPER_LATE));
  }

  /** The function of {@code cases} that fits, applied. */
  <T> T fold(Cases<T> cases);

  /**
   * One function for each kind of result.
   *
   * @param <T> what they make of it
   */
  interface Cases<T> {
    /** For a file that was changed. */
    T changed(Changed result);

    /** For a file in which nothing was to be changed. */
    T unchanged(Unchanged result);

    /** For a file that was refused. */
    T rejected(Rejected result);
  }

  /**
   * At least one feature was reshaped.
   *
   * @param source the input
   * @param objects what became of each object
   * @param notices about the file as a whole
   * @param joints which pins and bores belong together
   * @param written true if the result was written; false after an inspection
   */
  record Changed(
      Source source,
      List<ObjectResult> objects,
      List<Notice> notices,
      Joints joints,
      boolean written)
      implements FileResult {

    /** Copies the lists. */
    public Changed {
      objects = List.copyOf(objects);
      notices = List.copyOf(notices);
    }

    @Override
    public <T> T fold(Cases<T> cases) {
      return cases.changed(this);
    }
  }

  /**
   * Nothing was to be changed; what was written equals the input byte for byte.
   *
   * @param source the input
   * @param objects what became of each object
   * @param notices about the file as a whole
   * @param joints which pins and bores belong together
   */
  record Unchanged(Source source, List<ObjectResult> objects, List<Notice> notices, Joints joints)
      implements FileResult {

    /** Copies the lists. */
    public Unchanged {
      objects = List.copyOf(objects);
      notices = List.copyOf(notices);
    }

    @Override
    public <T> T fold(Cases<T> cases) {
      return cases.unchanged(this);
    }
  }

  /**
   * There is no result, and nothing was written.
   *
   * @param source the input
   * @param cause what kind of failure it is
   * @param reason why, in words
   * @param objects what became of each object, as far as it came to that
   * @param notices about the file as a whole, without the reason
   * @param joints which pins and bores belong together, as far as it came to that
   */
  record Rejected(
      Source source,
      Cause cause,
      Notice reason,
      List<ObjectResult> objects,
      List<Notice> notices,
      Joints joints)
      implements FileResult {

    /** One without joints. */
    public Rejected(
        Source source,
        Cause cause,
        Notice reason,
        List<ObjectResult> objects,
        List<Notice> notices) {
      this(source, cause, reason, objects, notices, Joints.NONE);
    }

    /** Copies the lists. */
    public Rejected {
      objects = List.copyOf(objects);
      notices = List.copyOf(notices);
    }

    /** What kind of failure made an end. */
    public enum Cause {
      /** The input cannot be read or is not valid. */
      INVALID,
      /** The input is valid, but no object in it could be examined. */
      NOTHING_EXAMINED,
      /** The output cannot be written. */
      NOT_WRITTEN
    }

    @Override
    public <T> T fold(Cases<T> cases) {
      return cases.rejected(this);
    }
  }
}
