package gable.opc;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;

/**
 * The header in front of an item's data and the descriptor behind it (ZIP APPNOTE 4.3.7, 4.3.9),
 * compared with the central directory field by field: readers that walk from header to header must
 * see the same items as those that use the directory.
 */
final class LocalHeader {

  static final int SIGNATURE = 0x04034b50;
  static final int LENGTH = 30;
  static final int DESCRIPTOR_FLAG = 1 << 3;

  private static final int DESCRIPTOR_SIGNATURE = 0x08074b50;
  static final long ESCAPE = 0xFFFFFFFFL;
  static final int ZIP64_FIELD = 0x0001;

  private final ZipArchiveEntry entry;
  private final String name;
  private final ByteBuffer fields;
  private final ByteBuffer extra;
  private final Span span;

  private LocalHeader(ZipArchiveEntry entry, String name, ByteBuffer whole, Span span) {
    this.entry = entry;
    this.name = name;
    this.fields = whole;
    int extraAt = LENGTH + u16(whole, 26);
    this.extra = whole.slice(extraAt, whole.capacity() - extraAt).order(ByteOrder.LITTLE_ENDIAN);
    this.span = span;
  }

  /** Reads and compares the header of an item whose bytes end before {@code limit}. */
  static LocalHeader read(ByteSource file, ZipArchiveEntry entry, String name, long limit)
      throws IOException, PackageException {
    long at = entry.getLocalHeaderOffset();
    if (at < 0 || at > limit) {
      throw wrong(
          ZipRules.OUTSIDE,
          name,
          "its local header should start at byte " + at,
          "a place before byte " + limit);
    }
    if (at > limit - LENGTH) {
      throw overlap(name, at, limit);
    }
    ByteBuffer start = file.bytes(new Span(at, at + LENGTH));
    if (start.getInt(0) != SIGNATURE) {
      throw wrong(
          ZipRules.DISAGREE,
          name,
          "no local header stands at byte " + at,
          "the header that the directory points to");
    }
    long end = at + LENGTH + u16(start, 26) + u16(start, 28);
    if (end > limit) {
      throw overlap(name, at, limit);
    }
    Span span = new Span(at, end);
    LocalHeader header = new LocalHeader(entry, name, file.bytes(span), span);
    header.compare();
    return header;
  }

  private static PackageException overlap(String name, long at, long limit) {
    return wrong(
        ZipRules.OVERLAP,
        name,
        "its local header from byte " + at + " reaches into what follows",
        "an end before byte " + limit);
  }

  /** The header's bytes. */
  Span span() {
    return span;
  }

  private void compare() throws PackageException {
    byte[] localName = new byte[u16(fields, 26)];
    fields.get(LENGTH, localName);
    if (!Arrays.equals(localName, entry.getRawName())) {
      throw wrong(ZipRules.DISAGREE, name, "its local header has another name", "one name");
    }
    same("method", u16(fields, 8), entry.getMethod());
    same("flags", u16(fields, 6), entry.getRawFlag());
    boolean later = hasDescriptor();
    if (!(later && u32(14) == 0)) {
      same("checksum", u32(14), entry.getCrc());
    }
    long size = sizeField(22, 0);
    long stored = sizeField(18, u32(22) == ESCAPE ? Long.BYTES : 0);
    if (!(later && size == 0)) {
      same("size", size, entry.getSize());
    }
    if (!(later && stored == 0)) {
      same("deflated size", stored, entry.getCompressedSize());
    }
  }

  private boolean hasDescriptor() {
    return (u16(fields, 6) & DESCRIPTOR_FLAG) != 0;
  }

  /** A 32-bit size, or the one that the ZIP64 field holds at {@code offset} instead of it. */
  private long sizeField(int at, int offset) throws PackageException {
    long small = u32(at);
    if (small != ESCAPE) {
      return small;
    }
    int field = zip64Field();
    if (field < 0 || u16(extra, field + 2) < offset + Long.BYTES) {
      throw wrong(
          ZipRules.BAD_ZIP64,
          name,
          "its local header has no room for a 64-bit size",
          "a ZIP64 extra field with the size");
    }
    return extra.getLong(field + 4 + offset);
  }

  /** Where the ZIP64 field starts in the extra bytes, -1 if there is none. */
  private int zip64Field() {
    for (int at = 0; at + 4 <= extra.capacity(); at += 4 + u16(extra, at + 2)) {
      if (at + 4 + u16(extra, at + 2) > extra.capacity()) {
        return -1;
      }
      if (u16(extra, at) == ZIP64_FIELD) {
        return at;
      }
    }
    return -1;
  }

  /** The item's data, which must end before {@code limit}. */
  Span data(long limit) throws PackageException {
    long length = entry.getCompressedSize();
    if (length < 0 || length > limit - span.to()) {
      throw wrong(
          ZipRules.OVERLAP,
          name,
          "its " + length + " bytes of data from byte " + span.to() + " reach into what follows",
          "an end before byte " + limit);
    }
    return new Span(span.to(), span.to() + length);
  }

  /**
   * Where the item ends, its descriptor included. A descriptor may or may not have a signature and
   * may hold sizes of 32 or 64 bits; the one that says what the directory says is it.
   */
  long end(ByteSource file, Span data, long limit) throws IOException, PackageException {
    if (!hasDescriptor()) {
      return data.to();
    }
    long room = Math.min(limit, data.to() + 24);
    ByteBuffer bytes = file.bytes(new Span(data.to(), room));
    for (boolean signed : new boolean[] {true, false}) {
      for (boolean wide : new boolean[] {false, true}) {
        int length = (signed ? 4 : 0) + (wide ? 20 : 12);
        if (length <= bytes.capacity() && isDescriptor(bytes, signed, wide)) {
          return data.to() + length;
        }
      }
    }
    throw wrong(
        ZipRules.DISAGREE,
        name,
        "the descriptor behind its data says something else than the directory",
        "checksum and sizes as in the directory");
  }

  private boolean isDescriptor(ByteBuffer bytes, boolean signed, boolean wide) {
    if (signed && bytes.getInt(0) != DESCRIPTOR_SIGNATURE) {
      return false;
    }
    int at = signed ? 4 : 0;
    long sum = Integer.toUnsignedLong(bytes.getInt(at));
    long stored = wide ? bytes.getLong(at + 4) : Integer.toUnsignedLong(bytes.getInt(at + 4));
    long size = wide ? bytes.getLong(at + 12) : Integer.toUnsignedLong(bytes.getInt(at + 8));
    return sum == entry.getCrc() && stored == entry.getCompressedSize() && size == entry.getSize();
  }

  private void same(String what, long local, long central) throws PackageException {
    if (local != central) {
      throw wrong(
          ZipRules.DISAGREE,
          name,
          "its local header gives the " + what + " as " + local + ", the directory as " + central,
          "one value in both");
    }
  }

  private long u32(int at) {
    return Integer.toUnsignedLong(fields.getInt(at));
  }

  private static int u16(ByteBuffer bytes, int at) {
    return Short.toUnsignedInt(bytes.getShort(at));
  }

  private static PackageException wrong(Rule rule, String name, String found, String expected) {
    return new PackageException(new Problem(rule, Place.of(name), found, expected));
  }
}
