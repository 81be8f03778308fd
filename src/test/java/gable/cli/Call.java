package gable.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/**
 * One call of the command in this process, for tests.
 *
 * @param code its exit code
 * @param out what it wrote to standard output
 * @param err what it wrote to standard error
 */
record Call(int code, byte[] out, String err) {

  /** Runs the command with nothing on standard input. */
  static Call of(String... args) {
    return with(new byte[0], args);
  }

  /** Runs the command. */
  static Call with(byte[] in, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Streams streams = Streams.of(new ByteArrayInputStream(in), out, err, StandardCharsets.UTF_8);
    int code = Main.run(args, streams);
    return new Call(code, out.toByteArray(), err.toString(StandardCharsets.UTF_8));
  }

  /** Standard output as text. */
  String text() {
    return new String(out, StandardCharsets.UTF_8);
  }
}
