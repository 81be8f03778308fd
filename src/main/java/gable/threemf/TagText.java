package gable.threemf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One start tag of a text that is known to be well-formed, taken apart: where its attributes and
 * their values stand.
 */
final class TagText {

  /**
   * An attribute, as byte offsets.
   *
   * @param name its name with its prefix
   * @param start its first byte
   * @param value the first byte of its value
   * @param end behind its value, at the closing quote
   */
  record Attribute(String name, int start, int value, int end) {}

  private final byte[] text;
  private final int nameEnd;
  private final int end;
  private final String name;
  private final List<Attribute> attributes = new ArrayList<>();

  private TagText(byte[] text, int start) {
    this.text = text;
    int at = start + 1;
    while (!TagScanner.isSpace(text[at]) && text[at] != '/' && text[at] != '>') {
      at++;
    }
    nameEnd = at;
    name = utf8(start + 1, at);
    while (text[at] != '>') {
      at = TagScanner.isSpace(text[at]) || text[at] == '/' ? at + 1 : attribute(at);
    }
    end = at + 1;
  }

  /** The start tag whose opening bracket is at {@code start}. */
  static TagText at(byte[] text, int start) {
    return new TagText(text, start);
  }

  private int attribute(int start) {
    int at = start;
    while (text[at] != '=' && !TagScanner.isSpace(text[at])) {
      at++;
    }
    String attribute = utf8(start, at);
    while (text[at] != '"' && text[at] != '\'') {
      at++;
    }
    int value = at + 1;
    int close = value;
    while (text[close] != text[at]) {
      close++;
    }
    attributes.add(new Attribute(attribute, start, value, close));
    return close + 1;
  }

  private String utf8(int from, int to) {
    return new String(text, from, to - from, StandardCharsets.UTF_8);
  }

  /** Name with its prefix. */
  String name() {
    return name;
  }

  /** Prefix of the name with its colon, or nothing. */
  String prefix() {
    return name.substring(0, name.indexOf(':') + 1);
  }

  /** Offset behind the name. */
  int nameEnd() {
    return nameEnd;
  }

  /** Offset behind the closing bracket. */
  int end() {
    return end;
  }

  /** True for the tag of an empty element. */
  boolean empty() {
    return text[end - 2] == '/';
  }

  /** How the tag closes: a blank before the slash or none. */
  String closing() {
    return empty() && TagScanner.isSpace(text[end - 3]) ? " />" : "/>";
  }

  /** The attributes in their order. */
  List<Attribute> attributes() {
    return attributes;
  }

  /** The attribute with a name. */
  Optional<Attribute> attribute(String wanted) {
    return attributes.stream().filter(each -> each.name.equals(wanted)).findFirst();
  }

  /** The value of an attribute as written, or nothing. */
  String value(String wanted) {
    return attribute(wanted).map(each -> utf8(each.value, each.end)).orElse("");
  }

  /** The whole text of an attribute. */
  String whole(Attribute attribute) {
    return utf8(attribute.start, attribute.end + 1);
  }
}
