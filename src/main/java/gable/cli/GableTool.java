package gable.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.spi.ToolProvider;

/**
 * The command for other programs in the same process: {@code ToolProvider.findFirst("gable")}. Its
 * arguments and exit codes are those of the command. There is nothing on its standard input. What
 * goes to its standard output is text in UTF-8, or the bytes of a model where a {@link PrintStream}
 * takes them; a {@link PrintWriter} cannot take a model.
 */
public final class GableTool implements ToolProvider {

  /** For the service loader. */
  public GableTool() {}

  @Override
  public String name() {
    return "gable";
  }

  @Override
  public int run(PrintStream out, PrintStream err, String... args) {
    Streams streams = Streams.of(InputStream.nullInputStream(), out, err, StandardCharsets.UTF_8);
    int code = Main.run(args, streams);
    out.flush();
    return code;
  }

  @Override
  public int run(PrintWriter out, PrintWriter err, String... args) {
    try (TextStream text = new TextStream(out);
        TextStream words = new TextStream(err)) {
      InputStream nothing = InputStream.nullInputStream();
      int code = Main.run(args, Streams.of(nothing, text, words, StandardCharsets.UTF_8));
      return code;
    }
  }

  /** Bytes of a text, gathered until they are flushed; what is no text is refused. */
  private static final class TextStream extends OutputStream {
    private final PrintWriter writer;
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

    TextStream(PrintWriter writer) {
      this.writer = writer;
    }

    @Override
    public void write(int b) {
      bytes.write(b);
    }

    @Override
    public void write(byte[] from, int start, int count) {
      bytes.write(from, start, count);
    }

    /** Characters may be split between two writes; they never are where a line ends. */
    @Override
    public void flush() throws IOException {
      byte[] all = bytes.toByteArray();
      int whole = all.length;
      while (whole > 0 && all[whole - 1] != '\n') {
        whole--;
      }
      print(all, whole);
      bytes.reset();
      bytes.write(all, whole, all.length - whole);
    }

    private void print(byte[] all, int count) throws IOException {
      writer.print(StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(all, 0, count)));
      writer.flush();
    }

    @Override
    public void close() {
      try {
        print(bytes.toByteArray(), bytes.size());
      } catch (IOException e) {
        // what is left is no text, and whoever wrote it has been told when it flushed
      }
    }
  }
}
