package gable.cli;

import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;

/**
 * The streams of a process, passed in so that a command can be run anywhere.
 *
 * @param in standard input
 * @param out standard output, for bytes
 * @param text standard output, for people
 * @param err standard error, for people
 */
record Streams(InputStream in, OutputStream out, PrintStream text, PrintStream err) {

  /** The streams with text in a charset. */
  static Streams of(InputStream in, OutputStream out, OutputStream err, Charset charset) {
    return new Streams(
        in, out, new PrintStream(out, false, charset), new PrintStream(err, true, charset));
  }

  /** The same, but text goes to standard error since standard output carries data. */
  Streams withTextOnErr() {
    return new Streams(in, out, err, err);
  }
}
