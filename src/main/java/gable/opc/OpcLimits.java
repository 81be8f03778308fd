package gable.opc;

import java.util.Locale;

/**
 * How much a package may ask of the machine. Files come from strangers, so every size, count and
 * depth has an end. Each is far above what honest files hold, and the caller may raise it.
 *
 * @param archive of the file as a ZIP archive
 * @param inflation of what comes out of it
 * @param xml of the relationships and content types
 */
public record OpcLimits(Archive archive, Inflation inflation, Xml xml) {

  /** The values for files from strangers. */
  public static final OpcLimits DEFAULT =
      new OpcLimits(Archive.DEFAULT, Inflation.DEFAULT, Xml.DEFAULT);

  /**
   * Limits of the archive. The values are our own choice; the largest honest file measured has 56
   * items.
   *
   * @param bytes size of the file, bytes
   * @param items number of items
   * @param nameBytes length of an item's name, bytes (file systems end at 255 to 4,096)
   * @param directoryBytes size of the central directory, bytes
   */
  public record Archive(long bytes, int items, int nameBytes, int directoryBytes) {

    /** 2 GiB, 10,000 items, names of 1,024 bytes, a directory of 64 MiB. */
    public static final Archive DEFAULT = new Archive(2L << 30, 10_000, 1_024, 64 << 20);

    public Archive {
      if (bytes <= 0 || items <= 0 || nameBytes <= 0 || directoryBytes <= 0) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "archive limits: %d bytes, %d items, names of %d bytes, directory of %d bytes",
                bytes,
                items,
                nameBytes,
                directoryBytes));
      }
    }
  }

  /**
   * Limits of inflating. Measured on honest models: inflated to deflated about 5, up to 100 for
   * regular data; Deflate itself ends at about 1,032 (practice).
   *
   * @param partBytes inflated size of a part read into memory, bytes (by default half the memory
   *     that the program may take: the text of a part is less than half of what reading it needs)
   * @param totalBytes inflated size of all items together, bytes (own choice)
   * @param freeBytes inflated size up to which the ratio is not looked at, bytes (own choice)
   * @param ratio inflated to deflated size of one item beyond that, no unit (own choice)
   */
  public record Inflation(int partBytes, long totalBytes, long freeBytes, int ratio) {

    private static final int LONGEST_ARRAY = Integer.MAX_VALUE - 16;

    /** Half the memory or the longest array, 8 GiB in all, 200 to 1 beyond 16 MiB. */
    public static final Inflation DEFAULT =
        new Inflation(
            (int) Math.min(LONGEST_ARRAY, Runtime.getRuntime().maxMemory() / 2),
            8L << 30,
            16L << 20,
            200);

    public Inflation {
      if (partBytes <= 0 || totalBytes <= 0 || freeBytes < 0 || ratio <= 0) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "inflation limits: part %d bytes, total %d bytes, free %d bytes, ratio %d",
                partBytes,
                totalBytes,
                freeBytes,
                ratio));
      }
    }
  }

  /**
   * Limits of the XML in relationships and content types parts. The values are our own choice; the
   * schemas need a depth of 2 and 4 attributes.
   *
   * @param bytes inflated size of one such part, bytes
   * @param depth how deep elements may nest
   * @param attributes attributes and namespace declarations of one element
   * @param attributeChars length of one value, characters
   * @param relationships relationships in the whole package
   */
  public record Xml(int bytes, int depth, int attributes, int attributeChars, int relationships) {

    /** 16 MiB, depth 64, 256 attributes of 65,536 characters, 100,000 relationships. */
    public static final Xml DEFAULT = new Xml(16 << 20, 64, 256, 1 << 16, 100_000);

    public Xml {
      if (bytes <= 0 || depth <= 0 || attributes <= 0 || attributeChars <= 0) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "XML limits: %d bytes, depth %d, %d attributes of %d characters",
                bytes,
                depth,
                attributes,
                attributeChars));
      }
      if (relationships <= 0) {
        throw new IllegalArgumentException("XML limits: " + relationships + " relationships");
      }
    }
  }
}
