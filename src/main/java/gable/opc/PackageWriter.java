package gable.opc;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes a package with some parts changed. Everything else is copied as it stands in the old file:
 * order, headers, times, deflated bytes. Before an item is copied its sum is checked, so a damaged
 * package is never passed on. An edit that changes nothing gives the old file byte for byte.
 *
 * <p>The bytes written depend on the package, the edit and the level alone: no clock, no chance,
 * and no matter how many threads deflate.
 */
public final class PackageWriter {

  private final ZipArchive archive;
  private final PartChanges changes;
  private final Compression compression;
  private final ZipOutput out;
  private final Map<ZipItem, Written> old = new HashMap<>();
  private final List<Written> added = new ArrayList<>();

  private PackageWriter(
      ZipArchive archive, PartChanges changes, Compression compression, OutputStream out) {
    this.archive = archive;
    this.changes = changes;
    this.compression = compression;
    this.out = new ZipOutput(archive.file(), out);
  }

  /**
   * Writes the changed package.
   *
   * @param source stays open
   * @param out flushed, not closed
   * @throws PackageException if the old package is found to be damaged while it is copied
   * @throws WriteException if {@code out} does not take the bytes
   * @throws IllegalArgumentException if the edit names parts that are not there, or adds some that
   *     are
   */
  public static void write(
      OpcPackage source, PackageEdit edit, Compression compression, OutputStream out)
      throws PackageException, WriteException {
    PartChanges changes = PartChanges.of(source.contents(), edit);
    ZipArchive archive = source.archive();
    try (Sink sink = new Sink(out)) {
      if (edit.isEmpty()) {
        source.requireSound();
        archive.file().copy(new Span(0, archive.file().size()), sink);
      } else {
        new PackageWriter(archive, changes, compression, sink).write();
      }
    } catch (SinkException e) {
      throw new WriteException(
          new Problem(
              WriteRules.FAILED,
              Place.FILE,
              "writing failed (" + e.getMessage() + ")",
              "an output that takes all bytes"),
          e);
    } catch (IOException e) {
      throw DamageException.asPackageException("", e);
    }
  }

  private void write() throws IOException, PackageException, WriteException {
    List<ZipItem> order = new ArrayList<>(archive.items());
    order.sort(Comparator.comparingLong(item -> item.whole().from()));
    out.copy(new Span(0, order.get(0).whole().from()));
    for (ZipItem item : order) {
      if (!changes.isDropped(item)) {
        write(item);
      }
    }
    for (Map.Entry<String, PackageEdit.Addition> entry : changes.added().entrySet()) {
      long at = out.count();
      PartContent content = entry.getValue().content();
      Packed packed = BlockDeflater.deflate(content, usualLevel(), compression);
      String name = entry.getKey().substring(1);
      out.added(name, packed);
      added.add(new Written(name, at, Optional.of(packed)));
    }
    writeDirectory();
  }

  private void write(ZipItem item) throws IOException, PackageException, WriteException {
    long at = out.count();
    Optional<Packed> packed =
        changes
            .replacement(item)
            .map(
                content ->
                    item.isDeflated()
                        ? BlockDeflater.deflate(content, level(item, content), compression)
                        : BlockDeflater.store(content));
    if (packed.isPresent()) {
      out.changed(item, packed.get());
    } else {
      archive.requireSound(item);
      out.copy(item.whole());
    }
    old.put(item, new Written(item.name(), at, packed));
  }

  private int level(ZipItem item, PartContent content) {
    return compression.level() == Compression.AS_BEFORE
        ? Effort.level(content, (double) item.data().length() / Math.max(1, item.size()))
        : compression.level();
  }

  private int usualLevel() {
    return compression.level() == Compression.AS_BEFORE ? Effort.USUAL : compression.level();
  }

  private void writeDirectory() throws IOException, WriteException {
    long directoryAt = out.count();
    for (ZipItem item : archive.items()) {
      Written written = old.get(item);
      if (written == null) {
        continue;
      }
      if (written.packed().isPresent()) {
        out.changedRecord(item, written.packed().get(), written.at());
      } else {
        out.keptRecord(item, written.at());
      }
    }
    for (Written written : added) {
      out.addedRecord(written.name(), written.packed().orElseThrow(), written.at());
    }
    out.end(old.size() + added.size(), directoryAt, archive.end().record());
  }

  /** An item that has been written; it has new bytes unless it was copied. */
  private record Written(String name, long at, Optional<Packed> packed) {}

  /** Tells failures of the output from failures to read the old package. */
  private static final class Sink extends FilterOutputStream {

    Sink(OutputStream out) {
      super(out);
    }

    @Override
    public void write(int value) throws IOException {
      write(new byte[] {(byte) value}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
      try {
        out.write(bytes, from, count);
      } catch (IOException e) {
        throw new SinkException(e);
      }
    }

    @Override
    public void flush() throws IOException {
      try {
        out.flush();
      } catch (IOException e) {
        throw new SinkException(e);
      }
    }

    /** Only flushes: the stream belongs to the caller. */
    @Override
    public void close() throws IOException {
      flush();
    }
  }

  private static final class SinkException extends IOException {

    private static final long serialVersionUID = 1L;

    SinkException(IOException cause) {
      super(cause.getMessage(), cause);
    }
  }
}
