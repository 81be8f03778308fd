package gable.opc;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.compress.archivers.zip.UnicodePathExtraField;
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
  private static final int UTF8_FLAG = 1 << 11;
  private static final int ENCRYPTED_FLAGS = 1 | 1 << 6 | 1 << 13;

  private final ByteSource file;
  private final OpcLimits limits;
  private final List<Problem> notices;

  private ZipDirectory(ByteSource file, OpcLimits limits, List<Problem> notices) {
    this.file = file;
    this.limits = limits;
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
    ZipFile zip = open(channel);
    List<ZipArchiveEntry> entries = Collections.list(zip.getEntries());
    return new Listing(zip, end, new ZipDirectory(file, limits, notices).items(end, entries));
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
              "the central directory cannot be read (" + e.getMessage() + ")",
              "one record for each item"),
          e);
    }
  }

  private List<ZipItem> items(EndRecord end, List<ZipArchiveEntry> entries)
      throws IOException, PackageException {
    List<Span> records = records(end);
    if (entries.size() != records.size() || entries.size() != end.items()) {
      throw new PackageException(
          new Problem(
              ZipRules.DAMAGED,
              Place.FILE,
              "the directory lists " + records.size() + " items and claims " + end.items(),
              "the same number"));
    }
    List<Named> named = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      ZipArchiveEntry entry = entries.get(i);
      named.add(new Named(entry, i, records.get(i), name(entry)));
      check(entry, named.get(i).name());
    }
    return layOut(named, end.directory().from());
  }

  /** The ranges of the directory's records, which must fill it without a rest. */
  private List<Span> records(EndRecord end) throws IOException, PackageException {
    ByteBuffer bytes = file.bytes(end.directory());
    List<Span> records = new ArrayList<>();
    int at = 0;
    while (at + RECORD_LENGTH <= bytes.capacity() && bytes.getInt(at) == RECORD_SIGNATURE) {
      int next = at + RECORD_LENGTH;
      for (int field = 28; field <= 32; field += 2) { // lengths of name, extra field and comment
        next += Short.toUnsignedInt(bytes.getShort(at + field));
      }
      long from = end.directory().from();
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
    return records;
  }

  private void check(ZipArchiveEntry entry, String name) throws PackageException {
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

  private String name(ZipArchiveEntry entry) throws PackageException {
    byte[] raw = entry.getRawName();
    String name = decode(raw, (entry.getRawFlag() & UTF8_FLAG) != 0);
    limit(ZipRules.LONG_NAME, raw.length, limits.archive().nameBytes(), "bytes of item name");
    if (entry.getExtraField(UnicodePathExtraField.UPATH_ID) instanceof UnicodePathExtraField other
        && !Arrays.equals(other.getUnicodeName(), name.getBytes(StandardCharsets.UTF_8))) {
      throw wrong(
          ZipRules.DISAGREE, name, "an extra field gives the item another name", "one name");
    }
    fault(name)
        .ifPresent(
            found ->
                notices.add(
                    new Problem(
                        ZipRules.NAME, Place.of(name), found, "a name inside the package")));
    return name;
  }

  /** Names that lead out of a folder or hide from the eye when somebody unpacks the file. */
  private static Optional<String> fault(String name) {
    if (name.isEmpty()) {
      return Optional.of("the item has no name");
    }
    if (name.indexOf('\\') >= 0) {
      return Optional.of("the item's name holds a backslash");
    }
    if (name.chars().anyMatch(Character::isISOControl)) {
      return Optional.of("the item's name holds a control character");
    }
    if (Arrays.asList(name.split("/", -1)).contains("..")) {
      return Optional.of("the item's name leads to a folder above");
    }
    return Optional.empty();
  }

  private static String decode(byte[] raw, boolean utf8) throws PackageException {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(raw)).toString();
    } catch (CharacterCodingException e) {
      String name = new String(raw, StandardCharsets.ISO_8859_1);
      if (utf8) {
        throw wrong(
            ZipRules.NAME, name, "the item's name claims to be UTF-8 and is not", "valid UTF-8");
      }
      return name; // an old code page: only a label, since part names are ASCII
    }
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
