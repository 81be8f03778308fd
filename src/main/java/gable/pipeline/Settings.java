package gable.pipeline;

import gable.geom.Vec3;
import gable.plan.Limits;

/**
 * What the caller may decide.
 *
 * @param limits slope, sizes, roof and bridge
 * @param up direction that is up when the part is printed, in the frame of the file's build
 * @param choice which features and reshapers
 * @param mixedOrientation what becomes of an object that lies several ways up
 * @param unknownParts what becomes of parts that nobody knows, if something was changed
 * @param threads how many objects are worked on at once, at least 1; the result does not depend on
 *     it
 */
public record Settings(
    Limits limits,
    Vec3 up,
    Choice choice,
    MixedOrientation mixedOrientation,
    UnknownParts unknownParts,
    int threads) {

  /** What becomes of an object that is placed with different directions up. */
  public enum MixedOrientation {
    /** The object is cloned, one copy for each direction. */
    CLONE,
    /** The object is left, with the reason. */
    LEAVE
  }

  /** What becomes of parts that no relationship known to the standard covers. */
  public enum UnknownParts {
    /** They are kept and named in the report. */
    KEEP,
    /** They are dropped, as the letter of the standard assumes them stale. */
    DROP
  }

  /** Refuses a direction that is none and a count of threads that is none. */
  public Settings {
    if (!(up.norm() > 0) || !Double.isFinite(up.norm())) {
      throw new IllegalArgumentException("no direction: " + up);
    }
    if (threads < 1) {
      throw new IllegalArgumentException("threads: " + threads);
    }
  }

  /** The usual settings on one thread. */
  public static Settings usual() {
    return new Settings(
        Limits.usual(), Vec3.Z, Choice.USUAL, MixedOrientation.CLONE, UnknownParts.KEEP, 1);
  }

  /** The same with other limits. */
  public Settings withLimits(Limits other) {
    return new Settings(other, up, choice, mixedOrientation, unknownParts, threads);
  }

  /** The same with another direction up. */
  public Settings withUp(Vec3 other) {
    return new Settings(limits, other, choice, mixedOrientation, unknownParts, threads);
  }

  /** The same with another choice. */
  public Settings withChoice(Choice other) {
    return new Settings(limits, up, other, mixedOrientation, unknownParts, threads);
  }

  /** The same with another treatment of objects that lie several ways up. */
  public Settings withMixedOrientation(MixedOrientation other) {
    return new Settings(limits, up, choice, other, unknownParts, threads);
  }

  /** The same with another treatment of unknown parts. */
  public Settings withUnknownParts(UnknownParts other) {
    return new Settings(limits, up, choice, mixedOrientation, other, threads);
  }

  /** The same with another number of threads. */
  public Settings withThreads(int other) {
    return new Settings(limits, up, choice, mixedOrientation, unknownParts, other);
  }
}
