package gable.fuzz;

import java.nio.charset.StandardCharsets;

/** Bytes as text in which every byte is the character of the same number, and back. */
final class Text {

  private Text() {}

  static String of(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** A text with other characters as the bytes of its UTF-8. */
  static String utf8(String text) {
    return of(text.getBytes(StandardCharsets.UTF_8));
  }
}
