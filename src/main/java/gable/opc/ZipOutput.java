package gable.opc;

import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Writes an archive from pieces of another and new items. Kept items and their directory records
 * are copied byte for byte, only the offset in the record is new. Changed and added items have
 * their sizes and sum in the local header, so they need no descriptor (some readers stumble over
 * one) and no ZIP64.
 */
final class ZipOutput {

  private static final int RECORD_SIGNATURE = 0x02014b50;
  private static final int END_SIGNATURE = 0x06054b50;
  private static final int VERSION = 20; // folders and Deflate (ZIP APPNOTE 4.4.3.2)
  private static final int UTF8_FLAG = 1 << 11;
  private static final int METHOD_FLAGS = 1 << 1 | 1 << 2; // how hard Deflate tried
  private static final int FIRST_DAY = 1 << 5 | 1; // 1980-01-01, the first that ZIP knows

  private final ByteSource file;
  private final OutputStream out;
  private long count;

  ZipOutput(ByteSource file, OutputStream out) {
    this.file = file;
    this.out = new BufferedOutputStream(out, 1 << 16);
  }

  /** How many bytes have been written: where the next piece will start. */
  long count() {
    return count;
  }

  /** Copies bytes of the old archive. */
  void copy(Span span) throws IOException {
    file.copy(span, out);
    count += span.length();
  }

  /** Writes a changed item: the old header with other sizes, then the bytes. */
  void changed(ZipItem item, Packed packed) throws IOException, WriteException {
    ByteBuffer old = file.bytes(item.header());
    int nameEnd = LocalHeader.LENGTH + u16(old, 26);
    byte[] extra = withoutZip64(old, nameEnd, old.capacity());
    ByteBuffer header = buffer(nameEnd + extra.length);
    header.put(old.slice(0, nameEnd)).put(extra);
    header.putShort(4, version(old, 4)).putShort(6, flags(old, 6));
    putSizes(header, 14, packed);
    header.putShort(28, (short) extra.length);
    write(header);
    write(packed.bytes());
  }

  /** Writes a new item with Deflate and the first day that ZIP knows as its time. */
  void added(String name, Packed packed) throws IOException, WriteException {
    byte[] raw = name.getBytes(StandardCharsets.UTF_8);
    ByteBuffer header = buffer(LocalHeader.LENGTH + raw.length);
    header.putInt(LocalHeader.SIGNATURE);
    putNew(header, 4, packed);
    header.putShort(26, (short) raw.length).position(LocalHeader.LENGTH);
    header.put(raw);
    write(header);
    write(packed.bytes());
  }

  /** Directory record of a kept item that now starts at {@code offset}. */
  void keptRecord(ZipItem item, long offset) throws IOException, WriteException {
    ByteBuffer record = file.bytes(item.record());
    long old = Integer.toUnsignedLong(record.getInt(42));
    int wide = wideOffset(record, item.entry().getLocalHeaderOffset());
    if (wide >= 0) {
      record.putLong(wide, offset);
    }
    if (old != LocalHeader.ESCAPE) {
      record.putInt(42, narrow(offset));
    }
    write(record);
  }

  /** Directory record of a changed item that now starts at {@code offset}. */
  void changedRecord(ZipItem item, Packed packed, long offset) throws IOException, WriteException {
    ByteBuffer old = file.bytes(item.record());
    int nameEnd = 46 + u16(old, 28);
    int extraEnd = nameEnd + u16(old, 30);
    byte[] extra = withoutZip64(old, nameEnd, extraEnd);
    ByteBuffer record = buffer(old.capacity() - (extraEnd - nameEnd) + extra.length);
    record.put(old.slice(0, nameEnd)).put(extra);
    record.put(old.slice(extraEnd, old.capacity() - extraEnd));
    record.putShort(6, version(old, 6)).putShort(8, flags(old, 8));
    putSizes(record, 16, packed);
    record.putShort(30, (short) extra.length).putInt(42, narrow(offset));
    write(record);
  }

  /** Directory record of a new item that starts at {@code offset}. */
  void addedRecord(String name, Packed packed, long offset) throws IOException, WriteException {
    byte[] raw = name.getBytes(StandardCharsets.UTF_8);
    ByteBuffer record = buffer(46 + raw.length);
    record.putInt(RECORD_SIGNATURE).putShort((short) VERSION);
    putNew(record, 6, packed);
    record.putShort(28, (short) raw.length).putInt(42, narrow(offset)).position(46);
    record.put(raw);
    write(record);
  }

  /** The end record, with the comment of the old archive. */
  void end(int items, long directoryAt, Span oldEnd) throws IOException, WriteException {
    ByteBuffer end = file.bytes(oldEnd);
    long directorySize = count - directoryAt;
    end.putInt(0, END_SIGNATURE).putShort(4, (short) 0).putShort(6, (short) 0); // one volume
    end.putShort(8, (short) items).putShort(10, (short) items);
    end.putInt(12, narrow(directorySize)).putInt(16, narrow(directoryAt));
    write(end);
    out.flush();
  }

  private static void putNew(ByteBuffer header, int at, Packed packed) throws WriteException {
    header.putShort(at, (short) VERSION).putShort(at + 2, (short) UTF8_FLAG);
    header.putShort(at + 4, (short) 8).putShort(at + 6, (short) 0);
    header.putShort(at + 8, (short) FIRST_DAY);
    putSizes(header, at + 10, packed);
  }

  private static void putSizes(ByteBuffer header, int at, Packed packed) throws WriteException {
    header.putInt(at, (int) packed.sum());
    header.putInt(at + 4, narrow(packed.bytes().size())).putInt(at + 8, narrow(packed.size()));
  }

  /** A size or offset that must do with 32 bits. */
  private static int narrow(long value) throws WriteException {
    if (value >= LocalHeader.ESCAPE) {
      throw new WriteException(
          new Problem(
              WriteRules.TOO_LARGE,
              Place.FILE,
              "the result would have " + value + " bytes in one piece",
              "less than 4 GiB"));
    }
    return (int) value;
  }

  private static short version(ByteBuffer old, int at) {
    return (short) Math.min(u16(old, at), VERSION);
  }

  private static short flags(ByteBuffer old, int at) {
    return (short) (u16(old, at) & ~(LocalHeader.DESCRIPTOR_FLAG | METHOD_FLAGS));
  }

  /** The extra bytes without their ZIP64 field; a tail that is no field is kept. */
  private static byte[] withoutZip64(ByteBuffer old, int from, int to) {
    ByteArrayOutputStream kept = new ByteArrayOutputStream();
    int at = from;
    while (at + 4 <= to && at + 4 + u16(old, at + 2) <= to) {
      int next = at + 4 + u16(old, at + 2);
      if (u16(old, at) != LocalHeader.ZIP64_FIELD) {
        kept.write(old.array(), old.arrayOffset() + at, next - at);
      }
      at = next;
    }
    kept.write(old.array(), old.arrayOffset() + at, to - at);
    return kept.toByteArray();
  }

  /**
   * Where a directory record holds its offset in 64 bits; -1 if nowhere. The ZIP64 field holds
   * size, deflated size and offset, each only if its 32 bits say so (ZIP APPNOTE 4.5.3). Writers
   * that always put all three are met as well.
   */
  private static int wideOffset(ByteBuffer record, long old) {
    int extraAt = 46 + u16(record, 28);
    int extraEnd = extraAt + u16(record, 30);
    boolean escaped = Integer.toUnsignedLong(record.getInt(42)) == LocalHeader.ESCAPE;
    int place = escaped ? 8 * escapes(record) : 16;
    for (int at = extraAt; at + 4 <= extraEnd; at += 4 + u16(record, at + 2)) {
      boolean found =
          u16(record, at) == LocalHeader.ZIP64_FIELD
              && place + 8 <= u16(record, at + 2)
              && at + 4 + place + 8 <= extraEnd;
      if (found && record.getLong(at + 4 + place) == old) {
        return at + 4 + place;
      }
    }
    return -1;
  }

  private static int escapes(ByteBuffer record) {
    return (Integer.toUnsignedLong(record.getInt(24)) == LocalHeader.ESCAPE ? 1 : 0)
        + (Integer.toUnsignedLong(record.getInt(20)) == LocalHeader.ESCAPE ? 1 : 0);
  }

  private static ByteBuffer buffer(int length) {
    return ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static int u16(ByteBuffer bytes, int at) {
    return Short.toUnsignedInt(bytes.getShort(at));
  }

  private void write(ByteBuffer bytes) throws IOException {
    out.write(bytes.array(), bytes.arrayOffset(), bytes.capacity());
    count += bytes.capacity();
  }

  private void write(PartContent bytes) throws IOException {
    bytes.writeTo(out);
    count += bytes.size();
  }
}
