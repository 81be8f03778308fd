package gable.opc;

/** What an archive must obey, as far as it can be named before anything is inflated. */
final class ZipRules {

  private static final String ASK = "ask whoever made the file for a whole copy";
  private static final String PACK_AGAIN = "pack the parts again with an ordinary ZIP writer";

  static final Rule MISSING =
      Rule.error("input-missing", "practice", "check the name and the folder");
  static final Rule NOT_A_FILE = Rule.error("input-not-a-file", "practice", "name the file itself");
  static final Rule UNREADABLE =
      Rule.error("input-unreadable", "practice", "check the rights and the disk, then try again");
  static final Rule NOT_ZIP =
      Rule.error("zip-none", "3MF Core 1.1", "check that this is a 3MF file");
  static final Rule TRUNCATED = Rule.error("zip-truncated", "ZIP APPNOTE 4.3.16", ASK);
  static final Rule SEVERAL_ENDS = Rule.error("zip-several-ends", "ZIP APPNOTE 4.3.1", PACK_AGAIN);
  static final Rule MULTI_DISK =
      Rule.error("zip-multi-disk", "OPC Annex C", "join the volumes into one file");
  static final Rule BAD_ZIP64 = Rule.error("zip-bad-zip64", "ZIP APPNOTE 4.5.3", PACK_AGAIN);
  static final Rule DAMAGED = Rule.error("zip-damaged", "ZIP APPNOTE 4.3", ASK);
  static final Rule OUTSIDE = Rule.error("zip-item-outside", "ZIP APPNOTE 4.4.16", ASK);
  static final Rule OVERLAP = Rule.error("zip-items-overlap", "ZIP APPNOTE 4.3.6", PACK_AGAIN);
  static final Rule DISAGREE =
      Rule.error("zip-headers-disagree", "OPC Annex C [M3.14]", PACK_AGAIN);
  static final Rule ENCRYPTED =
      Rule.error("zip-encrypted", "OPC 9.2.5 [M3.9]", "pack the parts again without a password");
  static final Rule METHOD = Rule.error("zip-method", "3MF Core 1.1", PACK_AGAIN);
  static final Rule DUPLICATE = Rule.error("zip-duplicate-name", "OPC 9.2 [M3.3]", PACK_AGAIN);
  static final Rule NAME =
      Rule.error(
          "zip-item-name", "OPC 8.1.1 [M1.1-M1.10]", "rename the item and what refers to it");
  static final Rule STRAY =
      Rule.warning("zip-stray-bytes", "ZIP APPNOTE 4.3.6", "nothing; the bytes are kept");
  static final Rule SUM = Rule.error("zip-wrong-checksum", "ZIP APPNOTE 4.4.7", ASK);
  static final Rule SIZE = Rule.error("zip-wrong-size", "ZIP APPNOTE 4.4.9", ASK);
  static final Rule BAD_DATA = Rule.error("zip-bad-data", "RFC 1951", ASK);

  static final Rule BIG_FILE = limit("limit-package-bytes", "archive.bytes");
  static final Rule MANY_ITEMS = limit("limit-items", "archive.items");
  static final Rule LONG_NAME = limit("limit-name-bytes", "archive.nameBytes");
  static final Rule BIG_DIRECTORY = limit("limit-directory-bytes", "archive.directoryBytes");
  static final Rule BIG_PART =
      Rule.error(
          "limit-part-bytes",
          "limit inflation.partBytes",
          "split the model, or give the program more memory (java -Xmx)");
  static final Rule BIG_XML = limit("limit-xml-bytes", "xml.bytes");
  static final Rule BIG_TOTAL = limit("limit-total-bytes", "inflation.totalBytes");
  static final Rule RATIO = limit("limit-ratio", "inflation.ratio");

  private ZipRules() {}

  private static Rule limit(String code, String component) {
    return Rule.error(
        code, "limit " + component, "raise the limit only if you trust where the file comes from");
  }
}
