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
  TEXT("any text"),
  WORDS("words"),
  ID("a number from 1 to 2147483647"),
  INDEX("a number from 0 to 2147483647"),
  NUMBER("a finite decimal number"),
  POSITIVE("a number without a minus sign"),
  BOOLEAN("true or false"),
  COLOR("#RRGGBB or #RRGGBBAA"),
  UUID("32 lower-case hex digits with hyphens"),
  PATH("a path that starts with a slash"),
  IDS("ids of resources"),
  INDICES("numbers from 0 to 2147483647"),
  NUMBERS("decimal numbers"),
  MATRIX("twelve decimal numbers");

  private static final Pattern COLOR_VALUE = Pattern.compile("#([0-9A-Fa-f]{6}|[0-9A-Fa-f]{8})");
  private static final Pattern UUID_VALUE =
      Pattern.compile("[a-f0-9]{8}-[a-f0-9]{4}-[a-f0-9]{4}-[a-f0-9]{4}-[a-f0-9]{12}");
  private static final List<String> BOOLEANS = List.of("true", "false", "0", "1");

  private final String words;

  ValueType(String words) {
    this.words = words;
  }

  /** Whether the text is such a value. */
  boolean accepts(String text) {
    String value = text.strip();
    return switch (this) {
      case TEXT, WORDS -> true;
      case ID -> isId(value);
      case INDEX -> isIndex(value);
      case NUMBER -> isNumber(value);
      case POSITIVE -> isNumber(value) && !value.startsWith("-");
      case BOOLEAN -> BOOLEANS.contains(value);
      case COLOR -> COLOR_VALUE.matcher(value).matches();
      case UUID -> UUID_VALUE.matcher(value).matches();
      case PATH -> value.startsWith("/");
      case IDS -> all(value, ValueType::isId);
      case INDICES -> all(value, ValueType::isIndex);
      case NUMBERS -> all(value, ValueType::isNumber);
      case MATRIX -> NumberText.words(value).size() == 12 && all(value, ValueType::isNumber);
    };
  }

  private static boolean all(String list, Predicate<String> test) {
    List<String> words = NumberText.words(list);
    return !words.isEmpty() && words.stream().allMatch(test);
  }

  private static boolean isId(String value) {
    return NumberText.index(value) > 0;
  }

  private static boolean isIndex(String value) {
    return NumberText.index(value) >= 0;
  }

  private static boolean isNumber(String value) {
    return !Double.isNaN(NumberText.number(value));
  }

  /** What such a value is, in words. */
  String words() {
    return words;
  }
}
