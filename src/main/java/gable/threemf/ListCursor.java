package gable.threemf;

/**
 * Reads the plain form of a vertex or triangle list: empty elements with the list's own prefix,
 * each with its own attributes only, white space between them and nothing else. Everything else
 * makes a method answer "no", and the general way takes over; so does every number that is not
 * plain, since the general way also says what is wrong with it.
 *
 * <p>A byte beyond the end reads as 0, which occurs in no XML.
 */
final class ListCursor {

  private static final double[] POWERS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18
  };

  private final byte[] text;
  private final int end;
  private int at;

  ListCursor(byte[] text, int from, int to) {
    this.text = text;
    this.at = from;
    this.end = to;
  }

  /** Place of the next byte to read. */
  int at() {
    return at;
  }

  /** Next byte, not taken. */
  int peek() {
    return at < end ? text[at] : 0;
  }

  private int peek(int ahead) {
    return at + ahead < end ? text[at + ahead] : 0;
  }

  /** Takes the next byte. */
  int take() {
    return at < end ? text[at++] : 0;
  }

  /** Takes white space; true if there was some. */
  boolean space() {
    int from = at;
    while (TagScanner.isSpace(peek())) {
      at++;
    }
    return at > from;
  }

  /** Takes the bytes if they are next. */
  boolean take(byte[] wanted) {
    if (end - at < wanted.length) {
      return false;
    }
    for (int i = 0; i < wanted.length; i++) {
      if (text[at + i] != wanted[i]) {
        return false;
      }
    }
    at += wanted.length;
    return true;
  }

  /** Takes the closing tag of the list whose closing bracket, slash and name are given. */
  boolean close(byte[] closing) {
    if (!take(closing)) {
      return false;
    }
    space();
    return take() == '>';
  }

  /** Takes {@code =} and an opening quote; 0 if something else is next, otherwise the quote. */
  int quote() {
    if (peek() != '=') {
      return 0;
    }
    int quote = peek(1);
    if (quote != '"' && quote != '\'') {
      return 0;
    }
    at += 2;
    return quote;
  }

  /** Takes a number and the closing quote; NaN if it is not plain. */
  double number(int quote) {
    int from = at;
    boolean minus = peek() == '-';
    at += minus ? 1 : 0;
    int first = at;
    int point = -1;
    long mantissa = 0;
    int c = peek();
    while ((c >= '0' && c <= '9') || (c == '.' && point < 0)) {
      if (c == '.') {
        point = at;
      } else {
        mantissa = mantissa * 10 + (c - '0');
      }
      at++;
      c = peek();
    }
    int digits = at - first;
    int scale = point < 0 ? 0 : at - point - 1;
    // at most 18 digits cannot overflow; 2^53 and 10^18 are exact, so one division rounds correctly
    if (c != quote || digits > 18 || digits == 0 || point == at - 1 || mantissa > 1L << 53) {
      return unusual(from, quote);
    }
    at++;
    double value = mantissa / POWERS[scale];
    return minus ? -value : value;
  }

  private double unusual(int from, int quote) {
    at = from;
    while (at < end && text[at] != quote) {
      at++;
    }
    if (at >= end) {
      return Double.NaN;
    }
    return NumberText.number(text, from, at++);
  }

  /** Takes an index of at most nine digits and the closing quote; -1 if it is not plain. */
  int index(int quote) {
    int from = at;
    int value = 0;
    int c = peek();
    while (c >= '0' && c <= '9' && at - from < 9) {
      value = value * 10 + (c - '0');
      at++;
      c = peek();
    }
    if (c != quote || at == from) {
      return -1;
    }
    at++;
    return value;
  }
}
