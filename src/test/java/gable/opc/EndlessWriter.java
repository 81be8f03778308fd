package gable.opc;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * Writes a file again and again, in a process of its own that a test kills. Each content is one
 * byte repeated, so that a mixture can be seen.
 */
final class EndlessWriter {

  static final int LENGTH = 3_000_000;

  private EndlessWriter() {}

  /** Arguments: the target, how often to write it, and the number of the first content. */
  public static void main(String[] arguments) throws Exception {
    Path target = Path.of(arguments[0]);
    long rounds = Long.parseLong(arguments[1]);
    long first = Long.parseLong(arguments[2]);
    for (long round = 0; round < rounds; round++) {
      byte[] bytes = new byte[LENGTH];
      Arrays.fill(bytes, (byte) ('a' + (first + round) % 26));
      try (SafeWrite output = SafeWrite.to(target)) {
        PartContent.of(bytes).writeTo(output.stream());
        output.commit();
      } catch (IOException | WriteException e) {
        System.exit(4);
      }
    }
  }
}
