package gable.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A text cut at its tags, as far as it has any; the pieces put together are the text again. */
final class Markup {

  /** An attribute inside a tag: its name, its value, and the offsets of the value. */
  record Attribute(int piece, String name, String value, int from, int to) {}

  private static final Pattern ATTRIBUTE =
      Pattern.compile("([\\w:.-]+)\\s*=\\s*(?:\"([^\"<]*)\"|'([^'<]*)')");

  private final List<String> pieces = new ArrayList<>();

  private Markup() {}

  static Markup of(String text) {
    Markup markup = new Markup();
    int at = 0;
    while (at < text.length()) {
      int open = text.indexOf('<', at);
      int close = open < 0 ? -1 : text.indexOf('>', open);
      int end = close < 0 ? text.length() : close + 1;
      int start = open < 0 || close < 0 ? text.length() : open;
      if (start > at) {
        markup.pieces.add(text.substring(at, start));
      }
      if (start < end) {
        markup.pieces.add(text.substring(start, end));
      }
      at = end;
    }
    return markup;
  }

  /** The pieces; may be changed. */
  List<String> pieces() {
    return pieces;
  }

  /** Numbers of the pieces that are tags whose name, without a prefix, is one of these. */
  List<Integer> tags(String... names) {
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      for (String name : names) {
        if (isTag(pieces.get(i), name)) {
          found.add(i);
        }
      }
    }
    return found;
  }

  private static boolean isTag(String piece, String name) {
    int at = piece.indexOf(name);
    if (at < 1 || piece.charAt(0) != '<') {
      return false;
    }
    boolean starts = at == 1 || (piece.charAt(at - 1) == ':' && piece.indexOf(' ') > at - 1);
    int end = at + name.length();
    return starts && end < piece.length() && !Character.isLetterOrDigit(piece.charAt(end));
  }

  /** The attributes of a piece. */
  List<Attribute> attributes(int piece) {
    List<Attribute> found = new ArrayList<>();
    if (pieces.get(piece).startsWith("<")) {
      Matcher matcher = ATTRIBUTE.matcher(pieces.get(piece));
      while (matcher.find()) {
        int group = matcher.group(2) != null ? 2 : 3;
        found.add(
            new Attribute(
                piece,
                matcher.group(1),
                matcher.group(group),
                matcher.start(group),
                matcher.end(group)));
      }
    }
    return found;
  }

  /** Gives an attribute another value; later ones of the same piece must be changed first. */
  void set(Attribute attribute, String value) {
    String piece = pieces.get(attribute.piece);
    pieces.set(
        attribute.piece,
        piece.substring(0, attribute.from) + value + piece.substring(attribute.to));
  }

  /** The text. */
  String text() {
    return String.join("", pieces);
  }
}
