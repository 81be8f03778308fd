package gable.opc;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Part names and references to them (OPC 8.1.1, 8.3.3.2, Annex A). A part name starts with a slash
 * and is otherwise the name of the ZIP item. Names and references occur raw and percent-encoded, in
 * any case; two that mean the same have the same {@link #key}.
 */
final class PartNames {

  /** Name of the package as the source of relationships. */
  static final String PACKAGE = "/";

  private static final Pattern SCHEME = Pattern.compile("[A-Za-z][A-Za-z0-9+.-]*:.*");
  private static final Pattern PIECE =
      Pattern.compile(".*/\\[\\d+](\\.last)?\\.piece", Pattern.CASE_INSENSITIVE);
  private static final Pattern ESCAPE = Pattern.compile("%[0-9A-Fa-f]{2}");
  private static final String PLAIN = "-._~!$&'()*+,;=:@/%"; // beside letters and digits

  private PartNames() {}

  /** The part name of a ZIP item. */
  static String ofItem(String item) {
    return "/" + item;
  }

  /**
   * What names that mean the same part have in common: percent escapes decoded, ASCII letters in
   * lower case. Escaped slashes stay escaped, since they would make another name.
   */
  static String key(String name) {
    return lower(decode(name));
  }

  /** ASCII letters in lower case; others are not folded (OPC 8.1.1 [M1.12]). */
  static String lower(String text) {
    StringBuilder folded = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      folded.append(c >= 'A' && c <= 'Z' ? (char) (c + 32) : c);
    }
    return folded.toString();
  }

  private static String decode(String name) {
    if (!ESCAPE.matcher(name).find()) {
      return name;
    }
    byte[] raw = name.getBytes(StandardCharsets.UTF_8);
    ByteArrayOutputStream plain = new ByteArrayOutputStream(raw.length);
    for (int i = 0; i < raw.length; i++) {
      int value = raw[i] == '%' && i + 2 < raw.length ? hex(raw[i + 1], raw[i + 2]) : -1;
      boolean kept = value < 0x20 || value == '/' || value == '\\' || value == '%';
      plain.write(kept ? raw[i] : value);
      i += kept ? 0 : 2;
    }
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(plain.toByteArray()))
          .toString();
    } catch (CharacterCodingException e) {
      return name; // escapes of no text: such a name means only itself
    }
  }

  private static int hex(byte high, byte low) {
    int value = Character.digit(high, 16) * 16 + Character.digit(low, 16);
    return Character.digit(high, 16) < 0 || Character.digit(low, 16) < 0 ? -1 : value;
  }

  /** Whether the item is a piece of a part (OPC 9.1.4). */
  static boolean isPiece(String item) {
    return PIECE.matcher(item).matches();
  }

  /** Why the text is not a valid part name, empty if it is one. */
  static Optional<String> fault(String name) {
    if (!name.startsWith("/") || name.length() < 2) {
      return Optional.of("it does not start with a slash and a character");
    }
    for (String segment : name.substring(1).split("/", -1)) {
      if (segment.isEmpty()) {
        return Optional.of("it has an empty segment");
      }
      if (segment.endsWith(".")) {
        return Optional.of("the segment '" + segment + "' ends in a dot");
      }
    }
    String leaf = name.substring(name.lastIndexOf('/') + 1);
    if (leaf.startsWith(".") && !isRelationships(name)) {
      return Optional.of("its last segment starts with a dot");
    }
    if (!name.chars().allMatch(PartNames::isPlain)) {
      return Optional.of("it holds characters that should be percent-encoded");
    }
    return escapeFault(name);
  }

  private static Optional<String> escapeFault(String name) {
    for (int at = name.indexOf('%'); at >= 0; at = name.indexOf('%', at + 1)) {
      String escape = name.substring(at, Math.min(name.length(), at + 3));
      if (!ESCAPE.matcher(escape).matches()) {
        return Optional.of("a percent sign is not followed by two hexadecimal digits");
      }
      int value = Integer.parseInt(escape.substring(1), 16);
      if (value == '/' || value == '\\' || isUnreserved(value)) {
        return Optional.of("it holds " + escape + ", which must not be percent-encoded");
      }
    }
    return Optional.empty();
  }

  private static boolean isPlain(int c) {
    return isAlphanumeric(c) || PLAIN.indexOf(c) >= 0;
  }

  private static boolean isUnreserved(int c) {
    return isAlphanumeric(c) || "-._~".indexOf(c) >= 0;
  }

  private static boolean isAlphanumeric(int c) {
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
  }

  /** Whether the part holds relationships (OPC 8.3.4): {@code .../_rels/....rels}. */
  static boolean isRelationships(String name) {
    String folded = lower(name);
    int slash = folded.lastIndexOf('/');
    return folded.endsWith(".rels") && folded.startsWith("/_rels/", slash - "/_rels".length());
  }

  /** The part, or the package, whose relationships a relationships part holds. */
  static String source(String relationships) {
    int slash = relationships.lastIndexOf('/');
    String folder = relationships.substring(0, slash - "_rels".length());
    String leaf = relationships.substring(slash + 1);
    return folder + leaf.substring(0, leaf.length() - ".rels".length());
  }

  /** The name of the part that holds the relationships of a part or the package. */
  static String relationships(String source) {
    int slash = source.lastIndexOf('/');
    return source.substring(0, slash + 1) + "_rels/" + source.substring(slash + 1) + ".rels";
  }

  /** The text after the last dot of the last segment, in lower case; empty without a dot. */
  static String extension(String name) {
    String leaf = name.substring(name.lastIndexOf('/') + 1);
    int dot = leaf.lastIndexOf('.');
    return dot < 0 ? "" : lower(leaf.substring(dot + 1));
  }

  /** Whether a target is an address rather than a place in the package. */
  static boolean hasScheme(String target) {
    return SCHEME.matcher(target).matches() || target.startsWith("//");
  }

  /**
   * The part name that a target means, resolved against the folder of its source part.
   *
   * @return empty if the target leads above the root of the package
   */
  static Optional<String> resolve(String source, String target) {
    String path = target.replaceFirst("[?#].*$", "");
    Deque<String> segments = new ArrayDeque<>();
    if (!path.startsWith("/")) {
      String folder = source.substring(0, source.lastIndexOf('/') + 1);
      path = folder + path;
    }
    for (String segment : Arrays.asList(path.substring(1).split("/", -1))) {
      if (segment.equals("..")) {
        if (segments.pollLast() == null) {
          return Optional.empty();
        }
      } else if (!segment.equals(".")) {
        segments.addLast(segment);
      }
    }
    return Optional.of("/" + String.join("/", segments));
  }

  /** A relationship id that is not among those taken, the first free of rel0, rel1, ... */
  static String freshId(Set<String> taken) {
    for (int number = 0; ; number++) {
      String id = String.format(Locale.ROOT, "rel%d", number);
      if (!taken.contains(id)) {
        return id;
      }
    }
  }
}
