package gable.opc;

import java.util.Locale;

/**
 * Text from a file made fit to be shown. Names and values come from strangers: they may hold
 * control characters that a terminal obeys, marks that turn the direction of writing, or megabytes.
 */
public final class Printable {

  /** Longest text shown, in characters; practice, so that a message stays one message. */
  private static final int LONGEST = 200;

  private Printable() {}

  /** The text with controls, format characters and lone surrogates spelled out, cut when long. */
  public static String text(String raw) {
    StringBuilder shown = new StringBuilder(Math.min(raw.length(), LONGEST));
    for (int i = 0; i < raw.length() && shown.length() < LONGEST; ) {
      int point = raw.codePointAt(i);
      i += Character.charCount(point);
      if (isPlain(point)) {
        shown.appendCodePoint(point);
      } else {
        shown.append(String.format(Locale.ROOT, "\\u{%X}", point));
      }
      if (i < raw.length() && shown.length() >= LONGEST) {
        shown.append("... (").append(raw.length()).append(" characters)");
      }
    }
    return shown.toString();
  }

  private static boolean isPlain(int point) {
    return switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }
}
