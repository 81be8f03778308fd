package gable.opc;

import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;

/**
 * One item of the archive, checked: its two headers agree and its bytes belong to it alone.
 *
 * @param entry what the central directory says
 * @param name its name, decoded
 * @param record its bytes in the central directory
 * @param header its local header
 * @param data its bytes as stored, perhaps deflated
 * @param whole from the local header to the next item or the directory: header, data, descriptor
 *     and any stray bytes, all of which are copied when the item is kept
 */
record ZipItem(
    ZipArchiveEntry entry, String name, Span record, Span header, Span data, Span whole) {

  /** Whether it is a folder, which is never a part. */
  boolean isFolder() {
    return name.endsWith("/");
  }

  /** Whether its bytes are deflated; else they are stored as they are. */
  boolean isDeflated() {
    return entry.getMethod() == ZipArchiveEntry.DEFLATED;
  }

  /** Inflated size in bytes, as claimed. */
  long size() {
    return entry.getSize();
  }

  /** Checksum of the inflated bytes, as claimed. */
  long sum() {
    return entry.getCrc();
  }
}
