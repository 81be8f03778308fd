package gable.opc;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.compress.archivers.zip.UnicodePathExtraField;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;

/** Names of ZIP items: decoded, and none that could harm whoever unpacks the file one day. */
final class ItemNames {

  private static final int UTF8_FLAG = 1 << 11;

  private ItemNames() {}

  /** The name of an item; a name that leads astray is added to {@code notices}. */
  static String of(ZipArchiveEntry entry, OpcLimits limits, List<Problem> notices)
      throws PackageException {
    byte[] raw = entry.getRawName();
    String name = decode(raw, (entry.getRawFlag() & UTF8_FLAG) != 0);
    int most = limits.archive().nameBytes();
    if (raw.length > most) {
      throw wrong(
          ZipRules.LONG_NAME,
          name,
          "the item's name has " + raw.length + " bytes",
          "at most " + most);
    }
    if (entry.getExtraField(UnicodePathExtraField.UPATH_ID) instanceof UnicodePathExtraField other
        && !Arrays.equals(other.getUnicodeName(), name.getBytes(StandardCharsets.UTF_8))) {
      throw wrong(
          ZipRules.DISAGREE, name, "an extra field gives the item another name", "one name");
    }
    fault(name)
        .map(
            found -> new Problem(ZipRules.NAME, Place.of(name), found, "a name inside the package"))
        .ifPresent(notices::add);
    return name;
  }

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

  private static PackageException wrong(Rule rule, String name, String found, String expected) {
    return new PackageException(new Problem(rule, Place.of(name), found, expected));
  }
}
