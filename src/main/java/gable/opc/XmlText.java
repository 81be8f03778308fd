package gable.opc;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * The text of a relationships or content types part. It is decoded strictly, so that encoding the
 * same text again gives the same bytes and a splice of the text is a splice of the bytes.
 */
final class XmlText {

  private final String part;
  private final String text;
  private final Charset charset;
  private final byte[] mark;

  private XmlText(String part, String text, Charset charset, byte[] mark) {
    this.part = part;
    this.text = text;
    this.charset = charset;
    this.mark = mark;
  }

  /** Decodes a part as UTF-8, or as UTF-16 when it starts with the byte order mark of that. */
  static XmlText decode(String part, byte[] bytes) throws PackageException {
    Charset charset = StandardCharsets.UTF_8;
    int skipped = 0;
    if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
      skipped = 3;
    } else if (startsWith(bytes, 0xFE, 0xFF)) {
      charset = StandardCharsets.UTF_16BE;
      skipped = 2;
    } else if (startsWith(bytes, 0xFF, 0xFE)) {
      charset = StandardCharsets.UTF_16LE;
      skipped = 2;
    }
    byte[] mark = Arrays.copyOf(bytes, skipped);
    try {
      ByteBuffer rest = ByteBuffer.wrap(bytes, skipped, bytes.length - skipped);
      CharBuffer text = charset.newDecoder().decode(rest);
      if (skipped > 0 && text.length() > 0 && text.charAt(0) == '\uFEFF') {
        // parsers of characters skip one that is left over, but before the XML only one may stand
        throw new PackageException(
            new Problem(
                OpcRules.XML, Place.of(part), "a second byte order mark", "well-formed XML"));
      }
      return new XmlText(part, text.toString(), charset, mark);
    } catch (CharacterCodingException e) {
      throw new PackageException(
          new Problem(
              OpcRules.ENCODING,
              Place.of(part),
              "its bytes are not valid " + charset.name(),
              "UTF-8, or UTF-16 with a byte order mark"),
          e);
    }
  }

  /** A new text in UTF-8 that stands in no part yet. */
  static XmlText utf8(String text) {
    return new XmlText("", text, StandardCharsets.UTF_8, new byte[0]);
  }

  private static boolean startsWith(byte[] bytes, int... start) {
    for (int i = 0; i < start.length; i++) {
      if (i >= bytes.length || Byte.toUnsignedInt(bytes[i]) != start[i]) {
        return false;
      }
    }
    return true;
  }

  /** Name of the part. */
  String part() {
    return part;
  }

  /** The text without the byte order mark. */
  String text() {
    return text;
  }

  /** Whether a declared encoding names the one that the bytes are in. */
  boolean isDeclaredAs(String declared) {
    String wanted = charset.equals(StandardCharsets.UTF_8) ? "utf-8" : "utf-16";
    return PartNames.lower(declared).equals(wanted);
  }

  /** The bytes of a changed text, with the encoding and the byte order mark of the original. */
  byte[] encode(String changed) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(mark);
    out.writeBytes(changed.getBytes(charset));
    return out.toByteArray();
  }
}
