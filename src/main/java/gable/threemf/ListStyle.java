package gable.threemf;

import java.nio.charset.StandardCharsets;

/**
 * How a list writes its elements, taken from its first one: name with prefix, white space before an
 * element, blank before the closing slash. New elements look like the old ones.
 *
 * @param name name of an element with its prefix
 * @param separator white space before an element
 * @param closing how an element closes
 * @param end where appended elements go: behind the last thing that is no white space
 */
record ListStyle(String name, String separator, String closing, int end) {

  static ListStyle of(byte[] text, Elements.Span span, String child) {
    TagScanner tags = new TagScanner(text, span.content(), span.contentEnd());
    int blank = span.content();
    while (blank < span.contentEnd() && TagScanner.isSpace(text[blank])) {
      blank++;
    }
    String separator =
        new String(text, span.content(), blank - span.content(), StandardCharsets.UTF_8);
    int end = span.contentEnd();
    while (end > span.content() && TagScanner.isSpace(text[end - 1])) {
      end--;
    }
    String prefix = TagText.at(text, span.start()).prefix();
    if (!tags.next()) {
      return new ListStyle(prefix + child, separator, "/>", end);
    }
    TagText first = TagText.at(text, tags.tagStart());
    return new ListStyle(prefix + child, separator, first.closing(), end);
  }
}
