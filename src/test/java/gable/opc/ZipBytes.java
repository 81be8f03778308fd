package gable.opc;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import org.jspecify.annotations.Nullable;

/**
 * An archive made byte by byte, so that each field can be made wrong on its own. Field order and
 * names: ZIP APPNOTE 4.3.7 (local header), 4.3.9 (descriptor), 4.3.12 (directory), 4.3.14 to 4.3.16
 * (end records). Every field has its honest value until a test sets another.
 */
final class ZipBytes {

  static final int STORED = 0;
  static final int DEFLATED = 8;

  private final List<Item> items = new ArrayList<>();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  byte[] before = {};
  byte[] comment = {};
  boolean zip64End;
  int disk;
  long itemsShift;
  long offsetShift;
  long sizeShift;
  long zip64OffsetShift;
  long zip64ItemsShift;

  /** One item; null boxes mean the honest value. */
  static final class Item {
    byte[] name;
    byte[] content;
    byte[] packed;
    int method = DEFLATED;
    int flags;
    int localFlags = -1;
    int localMethod = -1;
    byte @Nullable [] localName;
    byte[] localExtra = {};
    byte[] extra = {};
    byte[] comment = {};
    byte[] after = {};
    long sum;
    long size;
    long localSum = -1;
    long localSize = -1;
    long localStored = -1;
    boolean descriptor;
    boolean descriptorSigned = true;
    boolean descriptorWide;
    long descriptorSum = -1;
    int time = 0x6000; // 12:00:00
    int date = 0x5A21; // 2025-01-01
    int disk;
    long offset;
    long offsetField = -1;
    long sizeField = -1;
    long storedField = -1;
    long localSizeField = -1;
    long localStoredField = -1;

    private Item(String name, byte[] content) {
      this.name = name.getBytes(StandardCharsets.UTF_8);
      this.content = content;
      CRC32 crc = new CRC32();
      crc.update(content);
      this.sum = crc.getValue();
      this.size = content.length;
      this.packed = ZipBytes.deflate(content);
    }

    Item stored() {
      method = STORED;
      packed = content;
      return this;
    }
  }

  static byte[] deflate(byte[] content) {
    Deflater deflater = new Deflater(6, true);
    deflater.setInput(content);
    deflater.finish();
    byte[] packed = new byte[content.length + 64];
    int count = deflater.deflate(packed);
    deflater.end();
    return Arrays.copyOf(packed, count);
  }

  Item add(String name, String content) {
    return add(name, content.getBytes(StandardCharsets.UTF_8));
  }

  Item add(String name, byte[] content) {
    Item item = new Item(name, content);
    items.add(item);
    return item;
  }

  /** Gives an item other bytes, deflated as before. */
  void replace(String name, byte[] content) {
    Item item = item(name);
    Item fresh = new Item(name, content);
    item.content = fresh.content;
    item.packed = fresh.packed;
    item.sum = fresh.sum;
    item.size = fresh.size;
  }

  Item item(String name) {
    return items.stream()
        .filter(i -> new String(i.name, StandardCharsets.UTF_8).equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** The smallest valid package: one empty model. */
  static ZipBytes minimal() {
    ZipBytes zip = new ZipBytes();
    zip.add("[Content_Types].xml", Packages.TYPES);
    zip.add("_rels/.rels", Packages.ROOT_RELATIONSHIPS);
    zip.add("3D/3dmodel.model", Packages.MODEL);
    return zip;
  }

  byte[] bytes() {
    out.reset();
    out.writeBytes(before);
    for (Item item : items) {
      local(item);
    }
    int directoryAt = out.size();
    for (Item item : items) {
      record(item);
    }
    end(directoryAt, out.size() - directoryAt);
    return out.toByteArray();
  }

  private void local(Item item) {
    item.offset = out.size();
    int flags = item.flags | (item.descriptor ? 8 : 0);
    byte[] name = item.localName == null ? item.name : item.localName;
    u32(0x04034b50); // signature
    u16(20); // version needed
    u16(item.localFlags < 0 ? flags : item.localFlags); // flags
    u16(item.localMethod < 0 ? item.method : item.localMethod); // method
    u16(item.time); // time
    u16(item.date); // date
    u32(item.descriptor ? 0 : or(item.localSum, item.sum)); // CRC-32
    long stored = item.descriptor ? 0 : or(item.localStored, item.packed.length);
    u32(or(item.localStoredField, stored)); // deflated size
    long size = item.descriptor ? 0 : or(item.localSize, item.size);
    u32(or(item.localSizeField, size)); // size
    u16(name.length); // length of name
    u16(item.localExtra.length); // length of extra
    out.writeBytes(name);
    out.writeBytes(item.localExtra);
    out.writeBytes(item.packed);
    if (item.descriptor) {
      descriptor(item);
    }
    out.writeBytes(item.after);
  }

  private void descriptor(Item item) {
    if (item.descriptorSigned) {
      u32(0x08074b50); // signature, which may be missing
    }
    u32(or(item.descriptorSum, item.sum)); // CRC-32
    if (item.descriptorWide) {
      u64(item.packed.length); // deflated size
      u64(item.size); // size
    } else {
      u32(item.packed.length);
      u32(item.size);
    }
  }

  private void record(Item item) {
    u32(0x02014b50); // signature
    u16(20); // version made by
    u16(20); // version needed
    u16(item.flags | (item.descriptor ? 8 : 0)); // flags
    u16(item.method); // method
    u16(item.time); // time
    u16(item.date); // date
    u32(item.sum); // CRC-32
    u32(or(item.storedField, item.packed.length)); // deflated size
    u32(or(item.sizeField, item.size)); // size
    u16(item.name.length); // length of name
    u16(item.extra.length); // length of extra
    u16(item.comment.length); // length of comment
    u16(item.disk); // volume
    u16(0); // internal attributes
    u32(0); // external attributes
    u32(or(item.offsetField, item.offset)); // offset of local header
    out.writeBytes(item.name);
    out.writeBytes(item.extra);
    out.writeBytes(item.comment);
  }

  private void end(long directoryAt, long directorySize) {
    long count = items.size() + itemsShift;
    if (zip64End) {
      int at = out.size();
      u32(0x06064b50); // signature
      u64(44); // size of the rest
      u16(45); // version made by
      u16(45); // version needed
      u32(disk); // this volume
      u32(disk); // volume of the directory
      u64(count + zip64ItemsShift); // items here
      u64(count + zip64ItemsShift); // items
      u64(directorySize + sizeShift); // size of the directory
      u64(directoryAt + offsetShift); // offset of the directory
      u32(0x07064b50); // locator signature
      u32(disk); // volume of the ZIP64 end record
      u64(at + zip64OffsetShift); // its offset
      u32(disk + 1); // volumes
    }
    u32(0x06054b50); // signature
    u16(disk); // this volume
    u16(disk); // volume of the directory
    u16((int) count); // items here
    u16((int) count); // items
    u32(zip64End ? 0xFFFFFFFFL : directorySize + sizeShift); // size of the directory
    u32(zip64End ? 0xFFFFFFFFL : directoryAt + offsetShift); // offset of the directory
    u16(comment.length); // length of comment
    out.writeBytes(comment);
  }

  /** A ZIP64 extra field with the given 64-bit values. */
  static byte[] zip64Extra(long... values) {
    ZipBytes field = new ZipBytes();
    field.u16(1); // id
    field.u16(8 * values.length); // length
    for (long value : values) {
      field.u64(value);
    }
    return field.out.toByteArray();
  }

  /** An extra field with any id and content. */
  static byte[] extra(int id, byte[] content) {
    ZipBytes field = new ZipBytes();
    field.u16(id);
    field.u16(content.length);
    field.out.writeBytes(content);
    return field.out.toByteArray();
  }

  private static long or(long value, long honest) {
    return value < 0 ? honest : value;
  }

  private void u16(int value) {
    out.write(value);
    out.write(value >> 8);
  }

  private void u32(long value) {
    u16((int) value);
    u16((int) (value >> 16));
  }

  private void u64(long value) {
    u32(value);
    u32(value >> 32);
  }
}
