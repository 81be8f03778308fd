package gable.opc;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Changes to the text of an XML part that leave all other characters as they are: elements taken
 * out with the white space in front of them, and elements put in at the end of the root.
 */
final class TextSplice {

  private final String text;
  private final Bound root;
  private final List<Bound> removed = new ArrayList<>();
  private final StringBuilder inserted = new StringBuilder();

  TextSplice(String text, Bound root) {
    this.text = text;
    this.root = root;
  }

  /** Takes an element out. */
  void remove(Bound element) {
    removed.add(element);
  }

  /**
   * Puts an element in, with the namespace prefix of the root.
   *
   * @param attributes names and values in turn
   */
  void insert(String name, String... attributes) {
    inserted.append('<').append(prefix()).append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      inserted.append(' ').append(attributes[i]).append("=\"");
      inserted.append(escape(attributes[i + 1])).append('"');
    }
    inserted.append("/>");
  }

  /** Whether anything was changed. */
  boolean isEmpty() {
    return removed.isEmpty() && inserted.isEmpty();
  }

  /** The changed text. */
  String result() {
    StringBuilder result = new StringBuilder();
    removed.sort(Comparator.comparingInt(e -> e.from));
    int at = 0;
    for (Bound element : removed) {
      int from = element.from;
      while (from > at && Character.isWhitespace(text.charAt(from - 1))) {
        from--;
      }
      result.append(text, at, from);
      at = element.to;
    }
    if (inserted.isEmpty()) {
      return result.append(text, at, text.length()).toString();
    }
    boolean hasEndTag = root.endTag > root.from;
    int end = hasEndTag ? root.endTag : root.to - "/>".length();
    result.append(text, at, end);
    if (hasEndTag) {
      result.append(inserted);
    } else {
      result.append('>').append(inserted).append("</").append(rootName()).append('>');
      end = root.to;
    }
    return result.append(text, end, text.length()).toString();
  }

  private String rootName() {
    int end = root.from + 1;
    while (" \t\r\n/>".indexOf(text.charAt(end)) < 0) {
      end++;
    }
    return text.substring(root.from + 1, end);
  }

  private String prefix() {
    String name = rootName();
    return name.substring(0, name.indexOf(':') + 1);
  }

  private static String escape(String value) {
    return value.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
  }
}
