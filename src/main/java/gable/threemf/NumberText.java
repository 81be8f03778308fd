package gable.threemf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.StringTokenizer;
import org.jspecify.annotations.Nullable;

/**
 * Numbers as 3MF spells them.
 *
 * <p>Source: core specification 1.4, appendix B.1: ST_Number is {@code
 * [+-]?(d+(.d+)?|.d+)([eE][+-]?d+)?}; indices are xs:nonNegativeInteger. A literal may have at most
 * 64 characters, which no sensible producer exceeds and which bounds the work for each. Values are
 * those of {@link Double#parseDouble(String)}, which alone would also take {@code 1.}, {@code 1d},
 * {@code NaN} and hexadecimal numbers.
 */
public final class NumberText {

  /** Longest literal. */
  static final int LONGEST = 64;

  private NumberText() {}

  /** The words of a list attribute: what stands between XML white space. */
  public static List<String> words(@Nullable String list) {
    List<String> words = new ArrayList<>();
    StringTokenizer tokens = new StringTokenizer(list == null ? "" : list, " \t\r\n");
    while (tokens.hasMoreTokens()) {
      words.add(tokens.nextToken());
    }
    return words;
  }

  /** The value of the number in the text, or NaN if that is no number or not finite. */
  public static double number(String value) {
    byte[] bytes = value.strip().getBytes(StandardCharsets.UTF_8);
    return number(bytes, 0, bytes.length);
  }

  /** The same for the bytes from {@code from} to {@code to}. */
  static double number(byte[] text, int from, int to) {
    if (to - from > LONGEST || !isNumber(text, from, to)) {
      return Double.NaN;
    }
    String literal = new String(text, from, to - from, StandardCharsets.ISO_8859_1);
    double value = Double.parseDouble(literal);
    return Double.isFinite(value) ? value : Double.NaN;
  }

  private static boolean isNumber(byte[] text, int from, int to) {
    int whole = afterSign(text, from, to);
    int at = afterDigits(text, whole, to);
    boolean some = at > whole;
    if (at < to && text[at] == '.') {
      int fraction = at + 1;
      at = afterDigits(text, fraction, to);
      some = at > fraction;
    }
    if (some && at < to && (text[at] == 'e' || text[at] == 'E')) {
      int exponent = afterSign(text, at + 1, to);
      at = afterDigits(text, exponent, to);
      some = at > exponent;
    }
    return some && at == to;
  }

  private static int afterSign(byte[] text, int at, int to) {
    return at < to && (text[at] == '-' || text[at] == '+') ? at + 1 : at;
  }

  private static int afterDigits(byte[] text, int from, int to) {
    int at = from;
    while (at < to && text[at] >= '0' && text[at] <= '9') {
      at++;
    }
    return at;
  }

  /** The value of an index, or -1 if the text is no index or larger than 2^31 - 1. */
  public static int index(String value) {
    String text = value.strip();
    int from = text.startsWith("+") ? 1 : 0;
    if (text.length() == from || text.length() > LONGEST) {
      return -1;
    }
    long number = 0;
    for (int i = from; i < text.length(); i++) {
      int digit = text.charAt(i) - '0';
      if (digit < 0 || digit > 9) {
        return -1;
      }
      number = Math.min(number * 10 + digit, Integer.MAX_VALUE + 1L);
    }
    return number > Integer.MAX_VALUE ? -1 : (int) number;
  }
}
