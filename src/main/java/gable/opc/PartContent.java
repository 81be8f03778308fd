package gable.opc;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The new bytes of a part, put together from slices of arrays. A splice of a large part thus needs
 * no second copy of what it keeps. Arrays are not copied and must not be changed any more.
 * Immutable; may be read by several threads.
 */
public final class PartContent {

  private static final int CHUNK = 1 << 16;

  private final List<Slice> slices;
  private final long[] starts;
  private final long size;

  private PartContent(List<Slice> slices) {
    this.slices = List.copyOf(slices);
    this.starts = new long[slices.size()];
    long at = 0;
    for (int i = 0; i < starts.length; i++) {
      starts[i] = at;
      at += slices.get(i).length();
    }
    this.size = at;
  }

  /** All bytes of one array. */
  public static PartContent of(byte[] bytes) {
    return new Builder().add(bytes).build();
  }

  /** Length in bytes. */
  public long size() {
    return size;
  }

  /** Copies the {@code count} bytes from offset {@code from} to the given place of an array. */
  public void copy(long from, int count, byte[] into, int at) {
    if (from < 0 || count < 0 || from > size - count) {
      throw new IllegalArgumentException("bytes " + from + " to " + (from + count) + " of " + size);
    }
    int found = Arrays.binarySearch(starts, from);
    int index = found >= 0 ? found : -found - 2;
    for (int done = 0; done < count; index++) {
      Slice slice = slices.get(index);
      int skipped = (int) (from + done - starts[index]);
      int length = Math.min(count - done, slice.length() - skipped);
      System.arraycopy(slice.bytes, slice.from + skipped, into, at + done, length);
      done += length;
    }
  }

  /** Writes all bytes. */
  public void writeTo(OutputStream out) throws IOException {
    byte[] chunk = new byte[(int) Math.min(CHUNK, size)];
    for (long at = 0; at < size; ) {
      int count = (int) Math.min(chunk.length, size - at);
      copy(at, count, chunk, 0);
      out.write(chunk, 0, count);
      at += count;
    }
  }

  /**
   * All bytes in one array.
   *
   * @throws ArithmeticException if there are more than an array can hold
   */
  public byte[] toBytes() {
    byte[] bytes = new byte[Math.toIntExact(size)];
    copy(0, bytes.length, bytes, 0);
    return bytes;
  }

  /** Collects slices in order. */
  public static final class Builder {

    private final List<Slice> slices = new ArrayList<>();

    /** Adds a whole array. */
    public Builder add(byte[] bytes) {
      return add(bytes, 0, bytes.length);
    }

    /** Adds the bytes from offset {@code from} to before offset {@code to}. */
    public Builder add(byte[] bytes, int from, int to) {
      if (from < 0 || from > to || to > bytes.length) {
        throw new IllegalArgumentException("bytes " + from + " to " + to + " of " + bytes.length);
      }
      if (from < to) {
        slices.add(new Slice(bytes, from, to));
      }
      return this;
    }

    /** The content so far. */
    public PartContent build() {
      return new PartContent(slices);
    }
  }

  private static final class Slice {

    final byte[] bytes;
    final int from;
    final int to;

    Slice(byte[] bytes, int from, int to) {
      this.bytes = bytes;
      this.from = from;
      this.to = to;
    }

    int length() {
      return to - from;
    }
  }
}
