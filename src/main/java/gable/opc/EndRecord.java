package gable.opc;

import java.io.IOException;
import java.nio.ByteBuffer;

/**
 * Where the central directory is, as told by the end of the archive (ZIP APPNOTE 4.3.14 to 4.3.16).
 * Exactly one end record may fit the end of the file, and the directory must end where the end
 * records begin, so that no two readers can find two directories.
 *
 * @param directory bytes of the central directory
 * @param items number of items that it should list
 * @param record bytes of the end record, its comment included
 */
record EndRecord(Span directory, long items, Span record) {

  private static final int SIGNATURE = 0x06054b50;
  private static final int LENGTH = 22;
  private static final int SIGNATURE_64 = 0x06064b50;
  private static final int LENGTH_64 = 56;
  private static final int LOCATOR = 0x07064b50;
  private static final int LOCATOR_LENGTH = 20;
  private static final int LONGEST_COMMENT = 0xFFFF;

  /** Finds the one end record of the file. */
  static EndRecord find(ByteSource file) throws IOException, PackageException {
    long tailAt = Math.max(0, file.size() - LENGTH - LONGEST_COMMENT);
    ByteBuffer tail = file.bytes(new Span(tailAt, file.size()));
    int found = -1;
    boolean loose = false;
    for (int at = tail.capacity() - LENGTH; at >= 0; at--) {
      if (tail.getInt(at) != SIGNATURE) {
        continue;
      }
      if (at + LENGTH + u16(tail, at + 20) != tail.capacity()) {
        loose = true;
      } else if (found >= 0) {
        throw wrong(ZipRules.SEVERAL_ENDS, "two end records fit the end of the file", "one");
      } else {
        found = at;
      }
    }
    if (found < 0) {
      throw new PackageException(noEnd(file, loose));
    }
    return read(file, tailAt + found, tail.slice(found, LENGTH).order(tail.order()));
  }

  private static Problem noEnd(ByteSource file, boolean loose) throws IOException {
    if (loose) {
      return problem(
          ZipRules.TRUNCATED,
          "the archive's end record does not reach the end of the file",
          "an end record with its comment as the last bytes");
    }
    boolean startsLikeZip =
        file.size() >= 4 && file.bytes(new Span(0, 4)).getInt(0) == LocalHeader.SIGNATURE;
    return startsLikeZip
        ? problem(
            ZipRules.TRUNCATED, "the archive has no end record", "an end record as the last bytes")
        : problem(
            ZipRules.NOT_ZIP,
            file.size() == 0 ? "the file is empty" : "the file is not a ZIP archive",
            "a 3MF package, which is a ZIP archive");
  }

  private static EndRecord read(ByteSource file, long at, ByteBuffer end)
      throws IOException, PackageException {
    Span record = new Span(at, file.size());
    long locatorAt = at - LOCATOR_LENGTH;
    boolean located =
        locatorAt >= 0 && file.bytes(new Span(locatorAt, locatorAt + 4)).getInt(0) == LOCATOR;
    if (located) {
      return read64(file, locatorAt, end, record);
    }
    if (u16(end, 10) == 0xFFFF || u32(end, 12) == 0xFFFFFFFFL || u32(end, 16) == 0xFFFFFFFFL) {
      throw wrong(
          ZipRules.BAD_ZIP64,
          "the end record points to a ZIP64 record that is not there",
          "a ZIP64 locator before it");
    }
    requireOneDisk(u16(end, 4) | u16(end, 6), u16(end, 8), u16(end, 10));
    return of(u32(end, 16), u32(end, 12), u16(end, 10), record, at);
  }

  private static EndRecord read64(ByteSource file, long locatorAt, ByteBuffer end, Span record)
      throws IOException, PackageException {
    ByteBuffer locator = file.bytes(new Span(locatorAt, locatorAt + LOCATOR_LENGTH));
    long at = locator.getLong(8);
    if (at < 0 || at > locatorAt - LENGTH_64) {
      throw wrong(
          ZipRules.BAD_ZIP64,
          "the ZIP64 end record lies at byte " + at,
          "a place before its locator");
    }
    ByteBuffer end64 = file.bytes(new Span(at, at + LENGTH_64));
    if (end64.getInt(0) != SIGNATURE_64 || end64.getLong(4) != locatorAt - at - 12) {
      throw wrong(
          ZipRules.BAD_ZIP64,
          "no ZIP64 end record of the right length stands at byte " + at,
          "a ZIP64 end record that ends at its locator");
    }
    requireSame(u16(end, 10), 0xFFFFL, end64.getLong(32), "number of items");
    requireSame(u32(end, 12), 0xFFFFFFFFL, end64.getLong(40), "size of the directory");
    requireSame(u32(end, 16), 0xFFFFFFFFL, end64.getLong(48), "offset of the directory");
    requireOneDisk(
        u32(end64, 16) | u32(end64, 20) | u32(locator, 4), end64.getLong(24), end64.getLong(32));
    return of(end64.getLong(48), end64.getLong(40), end64.getLong(32), record, at);
  }

  private static EndRecord of(long from, long size, long items, Span record, long end)
      throws PackageException {
    if (from < 0 || size < 0 || size > end || from != end - size) {
      throw wrong(
          ZipRules.OUTSIDE,
          "the central directory should have " + size + " bytes from byte " + from,
          "a directory that ends at the end record, at byte " + end);
    }
    if (items < 0) {
      throw wrong(ZipRules.BAD_ZIP64, "the directory claims " + items + " items", "a count");
    }
    return new EndRecord(new Span(from, end), items, record);
  }

  private static void requireOneDisk(long disks, long itemsHere, long items)
      throws PackageException {
    if (disks != 0 || itemsHere != items) {
      throw wrong(
          ZipRules.MULTI_DISK, "the archive is one volume of several", "an archive in one file");
    }
  }

  private static void requireSame(long small, long escape, long large, String what)
      throws PackageException {
    if (small != escape && small != large) {
      throw wrong(
          ZipRules.BAD_ZIP64,
          "the two end records disagree about the " + what + ": " + small + " and " + large,
          "one value");
    }
  }

  private static int u16(ByteBuffer bytes, int at) {
    return Short.toUnsignedInt(bytes.getShort(at));
  }

  private static long u32(ByteBuffer bytes, int at) {
    return Integer.toUnsignedLong(bytes.getInt(at));
  }

  private static Problem problem(Rule rule, String found, String expected) {
    return new Problem(rule, Place.FILE, found, expected);
  }

  private static PackageException wrong(Rule rule, String found, String expected) {
    return new PackageException(problem(rule, found, expected));
  }
}
