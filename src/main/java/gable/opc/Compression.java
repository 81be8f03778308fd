package gable.opc;

import java.util.concurrent.Executor;

/**
 * How changed parts are deflated. The bytes that come out depend on the level alone.
 *
 * @param level effort from 1 (fast) to 9 (small), 6 is the usual middle; or {@link #AS_BEFORE}
 * @param threads how many threads may work on one part, the calling one among them
 * @param workers runs the others; it may be busy or refuse, then the calling thread does the work
 */
public record Compression(int level, int threads, Executor workers) {

  /** For a part that is replaced: the effort that its old content seems to have been given. */
  public static final int AS_BEFORE = 0;

  public Compression {
    if (level < AS_BEFORE || level > 9 || threads < 1) {
      throw new IllegalArgumentException("level " + level + " in " + threads + " threads");
    }
  }

  /** In the calling thread alone. */
  public static Compression serial(int level) {
    return new Compression(level, 1, Runnable::run);
  }
}
