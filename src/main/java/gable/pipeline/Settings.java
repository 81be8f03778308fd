package gable.pipeline;

import gable.geom.Vec3;
import gable.plan.Limits;

/**
 * What the caller may decide.
 *
 * @param limits slope, sizes, roof and bridge
 * @param up direction that is up when the part is printed, in the frame of the file's build
 * @param choice which features and reshapers
 * @param handling what becomes of what is unusual in a file
 * @param threads how many objects are worked on at once, at least 1; the result does not depend on
 *     it
 */
public record Settings(Limits limits, Vec3 up, Choice choice, Handling handling, int threads) {

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

  /**
   * What becomes of what is unusual in a file.
   *
   * @param mixedOrientation of an object that lies several ways up
   * @param unknownParts of parts that nobody knows, if something was changed
   * @param joinVertices whether triangles whose vertices are repeated instead of shared are taken
   *     to shared ones in the file, too, if that closes the mesh
   */
  public record Handling(
      MixedOrientation mixedOrientation, UnknownParts unknownParts, boolean joinVertices) {

    /** Clones, keeps, does not join. */
    public static final Handling USUAL =
        new Handling(MixedOrientation.CLONE, UnknownParts.KEEP, false);
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
    return new Settings(Limits.usual(), Vec3.Z, Choice.USUAL, Handling.USUAL, 1);
  }

  /** The same with other limits. */
  public Settings withLimits(Limits other) {
    return new Settings(other, up, choice, handling, threads);
  }

  /** The same with another direction up. */
  public Settings withUp(Vec3 other) {
    return new Settings(limits, other, choice, handling, threads);
  }

  /** The same with another choice. */
  public Settings withChoice(Choice other) {
    return new Settings(limits, up, other, handling, threads);
  }

  /** The same with another treatment of objects that lie several ways up. */
  public Settings withMixedOrientation(MixedOrientation other) {
    return with(new Handling(other, handling.unknownParts, handling.joinVertices));
  }

  /** The same with another treatment of unknown parts. */
  public Settings withUnknownParts(UnknownParts other) {
    return with(new Handling(handling.mixedOrientation, other, handling.joinVertices));
  }

  /** The same with repeated vertices joined in the file, or not. */
  public Settings withJoinVertices(boolean join) {
    return with(new Handling(handling.mixedOrientation, handling.unknownParts, join));
  }

  /** The same with another number of threads. */
  public Settings withThreads(int other) {
    return new Settings(limits, up, choice, handling, other);
  }

  private Settings with(Handling other) {
    return new Settings(limits, up, choice, other, threads);
  }
}
