package gable.validate;

import gable.threemf.NumberText;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * What the value of an attribute may be. Sources: the simple types in the schemas of the
 * specifications (core 1.4 B.1.2, production B.1, beam lattice B); blanks around a value may
 * collapse (core 2.3.4).
 */
enum ValueType {
  TEXT("any text", value -> true),
  WORDS("words", value -> true),
  ID("a number from 1 to 2147483647", value -> NumberText.index(value) > 0),
  INDEX("a number from 0 to 2147483647", value -> NumberText.index(value) >= 0),
  NUMBER("a finite decimal number", value -> !Double.isNaN(NumberText.number(value))),
  POSITIVE("a number without a minus sign", ValueType::isPositive),
  BOOLEAN("true or false", value -> List.of("true", "false", "0", "1").contains(value)),
  COLOR("#RRGGBB or #RRGGBBAA", matches("#([0-9A-Fa-f]{6}|[0-9A-Fa-f]{8})")),
  UUID(
      "32 lower-case hex digits with hyphens",
      matches("[a-f0-9]{8}-[a-f0-9]{4}-[a-f0-9]{4}-[a-f0-9]{4}-[a-f0-9]{12}")),
  PATH("a path that starts with a slash", value -> value.startsWith("/")),
  IDS("ids of resources", value -> all(value, word -> NumberText.index(word) > 0)),
  INDICES("numbers from 0 to 2147483647", value -> all(value, word -> NumberText.index(word) >= 0)),
  NUMBERS("decimal numbers", value -> all(value, ValueType::isNumber)),
  MATRIX(
      "twelve decimal numbers",
      value -> NumberText.words(value).size() == 12 && all(value, ValueType::isNumber));

  private final String words;
  private final Predicate<String> test;

  ValueType(String words, Predicate<String> test) {
    this.words = words;
    this.test = test;
  }

  private static Predicate<String> matches(String pattern) {
    return Pattern.compile(pattern).asMatchPredicate();
  }

  private static boolean all(String list, Predicate<String> test) {
    List<String> words = NumberText.words(list);
    return !words.isEmpty() && words.stream().allMatch(test);
  }

  private static boolean isNumber(String value) {
    return !Double.isNaN(NumberText.number(value));
  }

  private static boolean isPositive(String value) {
    return isNumber(value) && !value.strip().startsWith("-");
  }

  /** Whether the text is such a value. */
  boolean accepts(String text) {
    return test.test(text.strip());
  }

  /** What such a value is, in words. */
  String words() {
    return words;
  }
}
