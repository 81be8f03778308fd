package gable.opc;

import java.util.regex.Pattern;

/**
 * Something that a file must obey, with all that is the same for every breach of it. Rules are
 * constants beside the code that checks them.
 *
 * @param code stable name for scripts, lower case with hyphens, such as {@code zip-duplicate-name}
 * @param severity how much a breach matters
 * @param source where the rule is written, such as {@code OPC 9.1.2.2 [M2.5]}; for a limit of our
 *     own the word {@code limit} and its name in the limits record
 * @param remedy what whoever has the file can do, one clause without a full stop
 */
public record Rule(String code, Severity severity, String source, String remedy) {

  private static final Pattern CODE = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

  public Rule {
    if (!CODE.matcher(code).matches() || source.isBlank() || remedy.isBlank()) {
      throw new IllegalArgumentException("no rule: code '" + code + "', source '" + source + "'");
    }
  }

  /** A rule whose breach is an error. */
  public static Rule error(String code, String source, String remedy) {
    return new Rule(code, Severity.ERROR, source, remedy);
  }

  /** A rule whose breach is a warning. */
  public static Rule warning(String code, String source, String remedy) {
    return new Rule(code, Severity.WARNING, source, remedy);
  }

  /** A rule whose breach is worth a note. */
  public static Rule note(String code, String source, String remedy) {
    return new Rule(code, Severity.NOTE, source, remedy);
  }
}
