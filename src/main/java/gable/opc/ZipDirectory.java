package gable.opc;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;

/**
 * The items of an archive. The central directory decides which there are (a library reads it); then
 * every item's local header, data and descriptor are laid out and must fit it and each other.
 *
 * <p>Cost: one read of the directory and two small reads for each item; nothing is inflated.
 */
final class ZipDirectory {

  private static final int RECORD_SIGNATURE = 0x02014b50;
  private static final int RECORD_LENGTH = 46;
  private static final int ENCRYPTED_FLAGS = 1 | 1 << 6 | 1 << 13;

  private final ByteSource file;
  private final List<Problem> notices;

  private ZipDirectory(ByteSource file, List<Problem> notices) {
    this.file = file;
    this.notices = notices;
  }

  /**
   * Reads and checks the directory.
   *
   * @param channel the same file as {@code file}; the library's object closes it when it is closed
   *     or no longer used, so whoever uses the items must hold on to that
   * @param notices where warnings go
   */
  static Listing read(
      ByteSource file, SeekableByteChannel channel, OpcLimits limits, List<Problem> notices)
      throws IOException, PackageException {
    EndRecord end = EndRecord.find(file);
    limit(ZipRules.MANY_ITEMS, end.items(), limits.archive().items(), "items");
    limit(
        ZipRules.BIG_DIRECTORY,
        end.directory().length(),
        limits.archive().directoryBytes(),
        "bytes of directory");
    ZipDirectory directory = new ZipDirectory(file, notices);
    List<Span> records = directory.records(end); // counted before the library makes objects of them
    ZipFile zip = open(channel);
    List<ZipArchiveEntry> entries = Collections.list(zip.getEntries());
    if (entries.size() != records.size()) {
      throw miscounted(records.size(), entries.size());
    }
    List<Named> named = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      ZipArchiveEntry entry = entries.get(i);
      String name = ItemNames.of(entry, limits, notices);
      check(entry, name);
      named.add(new Named(entry, i, records.get(i), name));
    }
    return new Listing(zip, end, directory.layOut(named, end.directory().from()));
  }

  private static ZipFile open(SeekableByteChannel channel) throws PackageException {
    try {
      return ZipFile.builder()
          .setSeekableByteChannel(channel)
          .setIgnoreLocalFileHeader(true)
          .setUseUnicodeExtraFields(false)
          .get();
    } catch (IOException | IllegalArgumentException | ArithmeticException e) {
      throw new PackageException(
          new Problem(
              ZipRules.DAMAGED,
              Place.FILE,
              "the central directory cannot be read (" + reason(e) + ")",
              "one record for each item"),
          e);
    }
  }

  private static String reason(Exception e) {
    Throwable cause = e.getCause() == null ? e : e.getCause();
    return String.valueOf(cause.getMessage());
  }

  /** The ranges of the directory's records, which must be as many as claimed and fill it. */
  private List<Span> records(EndRecord end) throws IOException, PackageException {
    ByteBuffer bytes = file.bytes(end.directory());
    List<Span> records = new ArrayList<>();
    long from = end.directory().from();
    int at = 0;
    while (at + RECORD_LENGTH <= bytes.capacity() && bytes.getInt(at) == RECORD_SIGNATURE) {
      int next = at + RECORD_LENGTH;
      for (int field = 28; field <= 32; field += 2) { // lengths of name, extra field and comment
        next += Short.toUnsignedInt(bytes.getShort(at + field));
      }
      long offset = Integer.toUnsignedLong(bytes.getInt(at + 42));
      if (offset > from && offset != LocalHeader.ESCAPE) {
        throw new PackageException(
            new Problem(
                ZipRules.OUTSIDE,
                Place.FILE,
                "record " + (records.size() + 1) + " of the directory points to byte " + offset,
                "a local header before byte " + from));
      }
      records.add(new Span(from + at, from + next));
      at = next;
    }
    if (at != bytes.capacity()) {
      throw new PackageException(
          new Problem(
              ZipRules.DAMAGED,
              Place.FILE,
              "the directory's records end at byte " + at + " of its " + bytes.capacity(),
              "records that fill it"));
    }
    if (records.size() != end.items()) {
      throw miscounted(records.size(), end.items());
    }
    return records;
  }

  private static PackageException miscounted(long listed, long claimed) {
    return new PackageException(
        new Problem(
            ZipRules.DAMAGED,
            Place.FILE,
            "the directory lists " + listed + " items and claims " + claimed,
            "the same number"));
  }

  private static void check(ZipArchiveEntry entry, String name) throws PackageException {
    if ((entry.getRawFlag() & ENCRYPTED_FLAGS) != 0) {
      throw wrong(ZipRules.ENCRYPTED, name, "the item is encrypted", "an item that is not");
    }
    int method = entry.getMethod();
    if (method != ZipArchiveEntry.STORED && method != ZipArchiveEntry.DEFLATED) {
      throw wrong(
          ZipRules.METHOD, name, "it is packed by method " + method, "0 (stored) or 8 (Deflate)");
    }
    if (entry.getDiskNumberStart() != 0) {
      throw wrong(
          ZipRules.MULTI_DISK,
          name,
          "it starts in volume " + entry.getDiskNumberStart(),
          "an archive in one file");
    }
    if (method == ZipArchiveEntry.STORED && entry.getSize() != entry.getCompressedSize()) {
      throw wrong(
          ZipRules.SIZE,
          name,
          "it is stored as it is and has two sizes, "
              + entry.getSize()
              + " and "
              + entry.getCompressedSize()
              + " bytes",
          "one size");
    }
  }

  /** Reads the local headers in the order of the file, each with the next as its end. */
  private List<ZipItem> layOut(List<Named> named, long directoryAt)
      throws IOException, PackageException {
    List<Named> order = new ArrayList<>(named);
    order.sort(Comparator.comparingLong(n -> n.entry().getLocalHeaderOffset()));
    ZipItem[] items = new ZipItem[named.size()];
    for (int i = 0; i < order.size(); i++) {
      boolean last = i + 1 == order.size();
      long limit = last ? directoryAt : order.get(i + 1).entry().getLocalHeaderOffset();
      items[order.get(i).index()] = layOut(order.get(i), Math.min(limit, directoryAt));
    }
    if (!order.isEmpty() && order.get(0).entry().getLocalHeaderOffset() > 0) {
      stray("", "before its first item");
    }
    return List.of(items);
  }

  private ZipItem layOut(Named named, long limit) throws IOException, PackageException {
    if (named.entry().getLocalHeaderOffset() == limit) {
      throw wrong(
          ZipRules.OVERLAP,
          named.name(),
          "its local header is that of another item or the directory",
          "a header of its own");
    }
    LocalHeader header = LocalHeader.read(file, named.entry(), named.name(), limit);
    Span data = header.data(limit);
    long end = header.end(file, data, limit);
    if (end < limit) {
      stray(named.name(), "behind this item");
    }
    Span whole = new Span(header.span().from(), limit);
    return new ZipItem(named.entry(), named.name(), named.record(), header.span(), data, whole);
  }

  private void stray(String name, String where) {
    notices.add(
        new Problem(
            ZipRules.STRAY,
            Place.of(name),
            "the archive holds bytes " + where + " that belong to no item",
            "items without gaps"));
  }

  private static void limit(Rule rule, long found, long limit, String what)
      throws PackageException {
    if (found > limit) {
      throw wrong(rule, "", "the file has " + found + " " + what, "at most " + limit);
    }
  }

  private static PackageException wrong(Rule rule, String name, String found, String expected) {
    return new PackageException(new Problem(rule, Place.of(name), found, expected));
  }

  /**
   * What was read.
   *
   * @param zip holds the channel open
   * @param end the end record
   * @param items in the order of the directory
   */
  record Listing(ZipFile zip, EndRecord end, List<ZipItem> items) {}

  private record Named(ZipArchiveEntry entry, int index, Span record, String name) {}
}
