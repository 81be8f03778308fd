package gable.fuzz;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/** Streams that fail on the way. */
final class Ends {

  private Ends() {}

  /** Takes so many bytes and no more. */
  static final class Full extends OutputStream {
    private int room;

    Full(int room) {
      this.room = room;
    }

    @Override
    public void write(int value) throws IOException {
      if (room-- <= 0) {
        throw new IOException("no space left");
      }
    }
  }

  /** Gives so many bytes and then fails. */
  static final class Broken extends InputStream {
    private final InputStream bytes;

    Broken(byte[] bytes, int count) {
      this.bytes = new ByteArrayInputStream(bytes, 0, count);
    }

    @Override
    public int read() throws IOException {
      int value = bytes.read();
      if (value < 0) {
        throw new IOException("the line is dead");
      }
      return value;
    }

    @Override
    public int read(byte[] into, int from, int count) throws IOException {
      int got = bytes.read(into, from, count);
      if (got < 0) {
        throw new IOException("the line is dead");
      }
      return got;
    }
  }
}
