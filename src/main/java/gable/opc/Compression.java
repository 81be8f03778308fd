package gable.opc;

import java.util.concurrent.Executor;

/**
 * How changed parts are deflated. The bytes that come out depend on the level alone.
 *
 * @param level effort from 1 (fast) to 9 (small); 6 is the usual middle
 * @param threads how many threads may work on one part, the calling one among them
 * @param workers runs the others; it may be busy or refuse, then the calling thread does the work
 */
public record Compression(int level, int threads, Executor workers) {

  public Compression {
    if (level < 1 || level > 9 || threads < 1) {
      throw new IllegalArgumentException("level " + level + " in " + threads + " threads");
    }
  }

  /** In the calling thread alone. */
  public static Compression serial(int level) {
    return new Compression(level, 1, Runnable::run);
  }
}
