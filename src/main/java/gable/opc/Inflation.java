package gable.opc;

import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * The bytes of one item, inflated as they are asked for. Sizes are counted, never believed, and at
 * the end the size, the checksum and the end of the deflated data must be as the directory says.
 * Not safe for use by several threads at once.
 */
final class Inflation extends InputStream {

  private static final int CHUNK = 1 << 16;

  private final ByteSource file;
  private final ZipItem item;
  private final OpcLimits.Inflation limits;
  private final Runnable whenSound;
  private final Inflater inflater = new Inflater(true);
  private final CRC32 sum = new CRC32();
  private final byte[] chunk;
  private long nextAt;
  private long count;
  private boolean ended;

  /**
   * Starts at the first byte.
   *
   * @param whenSound called once all bytes have been read and found sound
   */
  Inflation(ByteSource file, ZipItem item, OpcLimits.Inflation limits, Runnable whenSound) {
    this.file = file;
    this.item = item;
    this.limits = limits;
    this.whenSound = whenSound;
    this.chunk = new byte[(int) Math.min(CHUNK, Math.max(1, item.data().length()))];
    this.nextAt = item.data().from();
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : Byte.toUnsignedInt(one[0]);
  }

  @Override
  public int read(byte[] into, int from, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    if (ended) {
      return -1;
    }
    int got = item.isDeflated() ? inflate(into, from, length) : copy(into, from, length);
    if (got < 0) {
      finish();
      return -1;
    }
    sum.update(into, from, got);
    count += got;
    guard();
    return got;
  }

  private int copy(byte[] into, int from, int length) throws IOException {
    int got = (int) Math.min(Math.min(length, chunk.length), item.data().to() - nextAt);
    if (got == 0) {
      return -1;
    }
    file.read(nextAt, chunk, got);
    System.arraycopy(chunk, 0, into, from, got);
    nextAt += got;
    return got;
  }

  private int inflate(byte[] into, int from, int length) throws IOException {
    try {
      while (true) {
        int got = inflater.inflate(into, from, length);
        if (got > 0) {
          return got;
        }
        if (inflater.finished()) {
          return -1;
        }
        feed();
      }
    } catch (DataFormatException e) {
      throw damaged(
          ZipRules.BAD_DATA,
          "its data cannot be inflated beyond byte " + count + " (" + e.getMessage() + ")",
          "valid Deflate data");
    }
  }

  private void feed() throws IOException {
    int got = (int) Math.min(chunk.length, item.data().to() - nextAt);
    if (inflater.needsDictionary() || got == 0) {
      throw damaged(
          ZipRules.BAD_DATA,
          "its data end after " + count + " inflated bytes in the middle of a block",
          "valid Deflate data");
    }
    file.read(nextAt, chunk, got);
    inflater.setInput(chunk, 0, got);
    nextAt += got;
  }

  /** Stops a bomb while it goes off: neither more than promised nor more than is honest. */
  private void guard() throws IOException {
    if (count > item.size()) {
      throw damaged(
          ZipRules.SIZE,
          "it inflates to more than the " + item.size() + " bytes promised",
          "the promised size");
    }
    if (count > limits.freeBytes() && count / limits.ratio() > item.data().length()) {
      throw damaged(
          ZipRules.RATIO,
          item.data().length() + " deflated bytes inflate to more than " + count,
          "at most " + limits.ratio() + " times as many");
    }
  }

  private void finish() throws IOException {
    ended = true;
    if (count != item.size()) {
      throw damaged(
          ZipRules.SIZE, "it inflates to " + count + " bytes", item.size() + " bytes as promised");
    }
    long unused = item.data().to() - nextAt + (item.isDeflated() ? inflater.getRemaining() : 0);
    if (unused != 0) {
      throw damaged(
          ZipRules.BAD_DATA, unused + " bytes follow the end of its deflated data", "none");
    }
    if (sum.getValue() != item.sum()) {
      throw damaged(
          ZipRules.SUM,
          String.format(Locale.ROOT, "its bytes have the CRC-32 %08X", sum.getValue()),
          String.format(Locale.ROOT, "%08X as promised", item.sum()));
    }
    whenSound.run();
  }

  private DamageException damaged(Rule rule, String found, String expected) {
    return new DamageException(new Problem(rule, Place.of(item.name()), found, expected));
  }

  @Override
  public void close() {
    ended = true;
    inflater.end();
  }
}
