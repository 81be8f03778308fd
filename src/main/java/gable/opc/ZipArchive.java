package gable.opc;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.SeekableByteChannel;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The open file with its items. Reading is safe from several threads at once; each item's sum is
 * checked once, whoever reads it first.
 */
final class ZipArchive implements Closeable {

  private static final int FIRST_GUESS = 1 << 16;
  private static final int TRUST = 8;

  private final ByteSource file;
  private final ZipDirectory.Listing listing;
  private final OpcLimits limits;
  private final Set<Span> sound = new HashSet<>();

  private ZipArchive(ByteSource file, ZipDirectory.Listing listing, OpcLimits limits) {
    this.file = file;
    this.listing = listing;
    this.limits = limits;
  }

  /** Opens the archive; the channel is closed with it, but not if it cannot be used. */
  static ZipArchive open(SeekableByteChannel channel, OpcLimits limits, List<Problem> notices)
      throws PackageException {
    try {
      return opened(channel, limits, notices);
    } catch (IOException e) {
      throw DamageException.asPackageException("", e);
    }
  }

  private static ZipArchive opened(
      SeekableByteChannel channel, OpcLimits limits, List<Problem> notices)
      throws IOException, PackageException {
    ByteSource file = new ByteSource(channel);
    if (file.size() > limits.archive().bytes()) {
      throw new PackageException(
          new Problem(
              ZipRules.BIG_FILE,
              Place.FILE,
              "the file has " + file.size() + " bytes",
              "at most " + limits.archive().bytes()));
    }
    ZipDirectory.Listing listing = ZipDirectory.read(file, channel, limits, notices);
    long total = listing.items().stream().mapToLong(ZipItem::size).reduce(0, ZipArchive::add);
    if (total > limits.inflation().totalBytes()) {
      throw new PackageException(
          new Problem(
              ZipRules.BIG_TOTAL,
              Place.FILE,
              "the items inflate to " + total + " bytes",
              "at most " + limits.inflation().totalBytes()));
    }
    return new ZipArchive(file, listing, limits);
  }

  private static long add(long sum, long size) {
    return sum > Long.MAX_VALUE - size ? Long.MAX_VALUE : sum + size;
  }

  /** All items in the order of the directory. */
  List<ZipItem> items() {
    return listing.items();
  }

  /** The end record. */
  EndRecord end() {
    return listing.end();
  }

  /** The file. */
  ByteSource file() {
    return file;
  }

  /** The item's bytes, inflated while they are read. */
  InputStream stream(ZipItem item) {
    return new Inflation(file, item, limits.inflation(), () -> markSound(item));
  }

  private synchronized void markSound(ZipItem item) {
    sound.add(item.data());
  }

  private synchronized boolean isSound(ZipItem item) {
    return sound.contains(item.data());
  }

  /** Makes sure that the item's bytes are what the directory says; inflates it if nobody did. */
  void requireSound(ZipItem item) throws PackageException {
    if (isSound(item)) {
      return;
    }
    byte[] sink = new byte[FIRST_GUESS];
    try (InputStream in = stream(item)) {
      int got;
      do {
        got = in.read(sink);
      } while (got >= 0);
    } catch (IOException e) {
      throw DamageException.asPackageException(item.name(), e);
    }
  }

  /**
   * All bytes of the item. The array grows with what has been read and takes the promised size only
   * once an eighth of it has come, so that a false promise costs little.
   *
   * @param most largest size allowed
   * @param limit the rule that says so
   */
  byte[] bytes(ZipItem item, long most, Rule limit) throws PackageException {
    if (item.size() > most) {
      throw new PackageException(
          new Problem(
              limit,
              Place.of(item.name()),
              "it inflates to " + item.size() + " bytes",
              "at most " + most));
    }
    int promised = (int) item.size();
    byte[] bytes = new byte[Math.min(promised, FIRST_GUESS)];
    int count = 0;
    try (InputStream in = stream(item)) {
      while (true) {
        if (count == bytes.length && count < promised) {
          bytes = Arrays.copyOf(bytes, grown(count, promised));
        }
        // Past the promised size one more byte is asked for, so that a surplus is noticed.
        int got = count < promised ? in.read(bytes, count, bytes.length - count) : in.read();
        if (got < 0) {
          return bytes;
        }
        count += got;
      }
    } catch (IOException e) {
      throw DamageException.asPackageException(item.name(), e);
    }
  }

  private static int grown(int count, int promised) {
    return count >= promised / TRUST ? promised : Math.min(promised, 2 * count);
  }

  @Override
  public void close() throws IOException {
    listing.zip().close();
  }
}
