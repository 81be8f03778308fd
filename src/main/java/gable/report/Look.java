package gable.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** What pages of this program have in common: their style, and how text gets into them. */
public final class Look {

  private Look() {}

  /** The style sheet. */
  public static String css() {
    return resource("/gable/report/look.css");
  }

  /** A text file of the jar. */
  public static String resource(String name) {
    try (InputStream in = Look.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the jar lacks " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * A template with its places {@code @name@} filled, in one go, so that what is filled in is not
   * searched for places.
   *
   * @throws IllegalArgumentException if the template has a place that is not filled
   */
  public static String fill(String template, Map<String, String> places) {
    StringBuilder text = new StringBuilder();
    int at = 0;
    for (int open = template.indexOf('@'); open >= 0; open = template.indexOf('@', at)) {
      int close = template.indexOf('@', open + 1);
      String name = close < 0 ? "" : template.substring(open + 1, close);
      text.append(template, at, open);
      if (name.matches("[a-z]+")) {
        String value = places.get(name);
        if (value == null) {
          throw new IllegalArgumentException("nothing for @" + name + "@");
        }
        text.append(value);
        at = close + 1;
      } else {
        text.append('@'); // an at-rule of a style sheet
        at = open + 1;
      }
    }
    return text.append(template, at, template.length()).toString();
  }

  /** Text as content or attribute of HTML; control and format characters are spelled out. */
  public static String html(String raw) {
    return Words.safe(raw)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }

  /** JSON that can stand inside a script element: nothing in it can end the element. */
  public static String inScript(String json) {
    return json.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026");
  }
}
