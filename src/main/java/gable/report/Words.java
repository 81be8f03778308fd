package gable.report;

import java.util.Locale;

/** Text that comes from outside, made fit to be shown on a terminal. */
public final class Words {

  private Words() {}

  /** The text with control and format characters spelled out. */
  public static String safe(String raw) {
    StringBuilder shown = new StringBuilder(raw.length());
    raw.codePoints()
        .forEach(
            point -> {
              if (isPlain(point)) {
                shown.appendCodePoint(point);
              } else {
                shown.append(String.format(Locale.ROOT, "\\u{%X}", point));
              }
            });
    return shown.toString();
  }

  private static boolean isPlain(int point) {
    return switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }
}
