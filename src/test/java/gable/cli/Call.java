package gable.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** One call of the command in this process, for tests. */
final class Call {

  private final int code;
  private final byte[] out;
  private final String err;

  private Call(int code, byte[] out, String err) {
    this.code = code;
    this.out = out;
    this.err = err;
  }

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

  /** Its exit code. */
  int code() {
    return code;
  }

  /** What it wrote to standard output. */
  byte[] out() {
    return out.clone();
  }

  /** What it wrote to standard error. */
  String err() {
    return err;
  }

  /** Standard output as text. */
  String text() {
    return new String(out, StandardCharsets.UTF_8);
  }
}
