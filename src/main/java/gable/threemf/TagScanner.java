package gable.threemf;

/**
 * Walks the tags in the bytes of an XML text in UTF-8, minding quotes, comments, processing
 * instructions and CDATA sections.
 *
 * <p>It does not judge well-formedness: at anything that it cannot read (an unfinished construct, a
 * DOCTYPE) it stops, and the XML parser, which reads the same bytes, has to say what is wrong.
 */
final class TagScanner {

  private final byte[] text;
  private final int end;
  private int at;
  private int tagStart;
  private int tagEnd;
  private int nameStart;
  private int nameEnd;
  private boolean closing;
  private boolean empty;

  TagScanner(byte[] text, int from, int to) {
    this.text = text;
    this.at = from;
    this.end = to;
  }

  /** Moves to the next start or end tag; false at the end of what can be read. */
  boolean next() {
    while (true) {
      int open = find('<', at);
      if (open < 0 || open + 1 >= end) {
        return stop();
      }
      byte kind = text[open + 1];
      if (kind == '!') {
        at = afterDeclaration(open);
      } else if (kind == '?') {
        at = after("?>", open + 2);
      } else {
        return tag(open, kind == '/');
      }
      if (at < 0) {
        return stop();
      }
    }
  }

  private boolean stop() {
    at = end;
    return false;
  }

  private int afterDeclaration(int open) {
    if (startsWith("<!--", open)) {
      return after("-->", open + 4);
    }
    return startsWith("<![CDATA[", open) ? after("]]>", open + 9) : -1;
  }

  private boolean tag(int open, boolean isEnd) {
    int from = open + (isEnd ? 2 : 1);
    int name = from;
    while (name < end && !isNameEnd(text[name])) {
      name++;
    }
    int close = closeOf(name);
    if (close < 0 || name == from) {
      return stop();
    }
    tagStart = open;
    nameStart = from;
    nameEnd = name;
    tagEnd = close + 1;
    closing = isEnd;
    empty = !isEnd && text[close - 1] == '/';
    at = tagEnd;
    return true;
  }

  /** Place of the {@code >} that ends the tag, outside of quotes; -1 if there is none. */
  private int closeOf(int from) {
    int quote = 0;
    for (int i = from; i < end; i++) {
      byte c = text[i];
      if (quote != 0) {
        quote = c == quote ? 0 : quote;
      } else if (c == '>') {
        return i;
      } else if (c == '"' || c == '\'') {
        quote = c;
      }
    }
    return -1;
  }

  private int find(char wanted, int from) {
    for (int i = from; i < end; i++) {
      if (text[i] == wanted) {
        return i;
      }
    }
    return -1;
  }

  private int after(String wanted, int from) {
    char first = wanted.charAt(0);
    for (int i = find(first, from); i >= 0; i = find(first, i + 1)) {
      if (startsWith(wanted, i)) {
        return i + wanted.length();
      }
    }
    return -1;
  }

  private boolean startsWith(String wanted, int from) {
    return matches(text, from, end, wanted);
  }

  /** True if the ASCII text stands at {@code from}, before {@code end}. */
  static boolean matches(byte[] text, int from, int end, String wanted) {
    if (from + wanted.length() > end) {
      return false;
    }
    for (int i = 0; i < wanted.length(); i++) {
      if (text[from + i] != wanted.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  static boolean isSpace(int c) {
    return c == ' ' || c == '\n' || c == '\r' || c == '\t';
  }

  private static boolean isNameEnd(byte c) {
    return isSpace(c) || c == '/' || c == '>' || c == '<';
  }

  /** Goes on from another place. */
  void moveTo(int place) {
    at = place;
  }

  int tagStart() {
    return tagStart;
  }

  /** Place after the closing bracket. */
  int tagEnd() {
    return tagEnd;
  }

  int nameStart() {
    return nameStart;
  }

  int nameEnd() {
    return nameEnd;
  }

  /** Place of the name behind its prefix. */
  int localStart() {
    for (int i = nameEnd - 1; i > nameStart; i--) {
      if (text[i] == ':') {
        return i + 1;
      }
    }
    return nameStart;
  }

  /** True for an end tag. */
  boolean closing() {
    return closing;
  }

  /** True for the tag of an empty element. */
  boolean empty() {
    return empty;
  }
}
