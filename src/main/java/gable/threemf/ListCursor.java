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

  private static final int MOST_DIGITS = 18;
  private static final long EXACT = 1L << 53;
  private static final double NEAR = 0x1p-40;

  private static final int MOST_INDEX = 9;

  /** Digits of a number below 2^53 whatever they are. */
  private static final int EXACT_DIGITS = 15;

  private static final int POINT = '.' - '0';

  /** Longest usual triangle: three times a name, an index and quotes; then the end. */
  private static final int USUAL_TRIANGLE = 3 * (MOST_INDEX + 6) + 2;

  /** Longest usual vertex: three times a name, a sign, digits, a point and quotes; then the end. */
  private static final int USUAL_VERTEX = 3 * (EXACT_DIGITS + 7) + 2;

  private static final double[] POWERS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18
  };

  private final byte[] text;
  private final int end;
  private int at;
  private int next;

  ListCursor(byte[] text, int from, int to) {
    this.text = text;
    this.at = from;
    this.end = to;
  }

  /** Place of the next byte to read. */
  int at() {
    return at;
  }

  /** Takes all up to a place. */
  void moveTo(int place) {
    at = place;
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
    int digits = at - first - (point < 0 ? 0 : 1);
    int scale = point < 0 ? 0 : at - point - 1;
    if (c != quote || digits > MOST_DIGITS || digits == 0 || point == at - 1) {
      return unusual(from, quote);
    }
    double value = quotient(mantissa, POWERS[scale]);
    if (Double.isNaN(value)) {
      return unusual(from, quote);
    }
    at++;
    return minus ? -value : value;
  }

  /**
   * The double next to m / d, or NaN in the rare case that this method cannot tell. 18 digits fit a
   * long, and 10^18 and less are exact doubles.
   *
   * <p>Up to 2^53 m is exact, too, and one division rounds correctly. Beyond, m = h + l with h the
   * nearest double and |l| at most 64. With q = h/d and the remainder r = h - q d, which is exact
   * (that is what fused multiply-add is for), m/d = q + (r + l)/d. The last term is at most 2^-52 q
   * and computed with a relative error of at most 2^-52, so the sum of the two is right to 2^-104.
   * Rounding it is right, too, unless it is that close to the middle between two doubles: at half a
   * step, or a quarter where the binade ends below. There, and 2^-40 around, the caller has to take
   * the slow way.
   */
  private static double quotient(long m, double d) {
    if (m <= EXACT) {
      return m / d;
    }
    double high = m;
    double low = m - (long) high;
    double q = high / d;
    double rest = (Math.fma(-q, d, high) + low) / d;
    double sum = q + rest;
    double lost = Math.abs(rest - (sum - q));
    double half = Math.ulp(sum) / 2;
    boolean clear = half - lost > half * NEAR && Math.abs(half / 2 - lost) > half * NEAR;
    return clear ? sum : Double.NaN;
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

  /**
   * Takes the attributes and the end of a triangle in the form that nearly all producers write, to
   * the byte: {@code v1="1" v2="2" v3="3"/>}. Takes nothing if anything else is next.
   *
   * <p>This is a fast path: with locals instead of fields, and one test for the end of the text, a
   * million triangles take a third of the time of {@link #index} and its like.
   *
   * @param corners filled with the three indices if they are next
   */
  boolean usualTriangle(int[] corners) {
    byte[] bytes = text;
    int p = at;
    if (end - p < USUAL_TRIANGLE) {
      return false;
    }
    for (int k = 0; k < 3; k++) {
      if (bytes[p] != ' '
          || bytes[p + 1] != 'v'
          || bytes[p + 2] != '1' + k
          || !opens(bytes, p + 3)) {
        return false;
      }
      int first = p + 5;
      int value = 0;
      int digit = bytes[first] - '0';
      for (p = first; digit >= 0 && digit <= 9 && p < first + MOST_INDEX; p++) {
        value = 10 * value + digit;
        digit = bytes[p + 1] - '0';
      }
      if (p == first || bytes[p] != '"') {
        return false;
      }
      corners[k] = value;
      p++;
    }
    if (bytes[p] != '/' || bytes[p + 1] != '>') {
      return false;
    }
    at = p + 2;
    return true;
  }

  private static boolean opens(byte[] bytes, int at) {
    return bytes[at] == '=' && bytes[at + 1] == '"';
  }

  /**
   * The same for a vertex: {@code x="1" y="-2" z="3.5"/>}, with numbers of at most fifteen digits,
   * whose quotient by a power of ten one division rounds correctly.
   *
   * @param point filled with the three coordinates if they are next
   */
  boolean usualVertex(double[] point) {
    byte[] bytes = text;
    int p = at;
    if (end - p < USUAL_VERTEX) {
      return false;
    }
    for (int axis = 0; axis < 3; axis++) {
      if (bytes[p] != ' ' || bytes[p + 1] != 'x' + axis || !opens(bytes, p + 2)) {
        return false;
      }
      point[axis] = usualNumber(bytes, p + 4);
      if (Double.isNaN(point[axis])) {
        return false;
      }
      p = next;
    }
    if (bytes[p] != '/' || bytes[p + 1] != '>') {
      return false;
    }
    at = p + 2;
    return true;
  }

  /** A number and the quote after it, which leaves in {@code next} what follows; NaN if unusual. */
  private double usualNumber(byte[] bytes, int from) {
    boolean minus = bytes[from] == '-';
    int first = minus ? from + 1 : from;
    int point = -1;
    long mantissa = 0;
    int p = first;
    for (; p <= first + EXACT_DIGITS; p++) {
      int digit = bytes[p] - '0';
      if (digit >= 0 && digit <= 9) {
        mantissa = 10 * mantissa + digit;
      } else if (digit == POINT && point < 0) {
        point = p;
      } else {
        break;
      }
    }
    int digits = p - first - (point < 0 ? 0 : 1);
    if (bytes[p] != '"' || digits == 0 || digits > EXACT_DIGITS || point == p - 1) {
      return Double.NaN;
    }
    next = p + 1;
    double value = point < 0 ? mantissa : mantissa / POWERS[p - point - 1];
    return minus ? -value : value;
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
