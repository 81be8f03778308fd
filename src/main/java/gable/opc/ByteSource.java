package gable.opc;

import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;

/** The file as numbered bytes. May be used by several threads. */
final class ByteSource {

  private static final int CHUNK = 1 << 16;

  private final SeekableByteChannel channel;
  private final long size;

  ByteSource(SeekableByteChannel channel) throws IOException {
    this.channel = channel;
    this.size = channel.size();
  }

  /** Length of the file in bytes when it was opened. */
  long size() {
    return size;
  }

  /**
   * The bytes of a range, little-endian. The caller has checked that the length is reasonable.
   *
   * @throws EOFException if the range is not inside the file
   */
  ByteBuffer bytes(Span span) throws IOException {
    if (span.from() < 0 || span.to() > size) {
      throw new EOFException(span + " is not inside the " + size + " bytes of the file");
    }
    byte[] bytes = new byte[Math.toIntExact(span.length())];
    read(span.from(), bytes, bytes.length);
    return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  /** Fills the first {@code count} bytes of {@code into} from the given offset. */
  void read(long from, byte[] into, int count) throws IOException {
    ByteBuffer target = ByteBuffer.wrap(into, 0, count);
    synchronized (channel) {
      channel.position(from);
      while (target.hasRemaining()) {
        if (channel.read(target) < 0) {
          throw new EOFException("the file ends before byte " + (from + count));
        }
      }
    }
  }

  /** Copies a range. */
  void copy(Span span, OutputStream out) throws IOException {
    byte[] chunk = new byte[(int) Math.min(CHUNK, span.length())];
    for (long at = span.from(); at < span.to(); ) {
      int count = (int) Math.min(chunk.length, span.to() - at);
      read(at, chunk, count);
      out.write(chunk, 0, count);
      at += count;
    }
  }
}
