package gable.opc;

/**
 * One thing that is wrong or odd, as a value: what was found and where, what was expected, by which
 * rule, and what to do.
 *
 * @param rule the rule that is broken
 * @param place where
 * @param found what stands there, a clause such as {@code two items have the name '3D/a.model'}
 * @param expected what should stand there, a clause such as {@code one item for each name}
 */
public record Problem(Rule rule, Place place, String found, String expected) {

  public Problem {
    if (found.isBlank() || expected.isBlank()) {
      throw new IllegalArgumentException("problem " + rule.code() + " says nothing");
    }
  }

  /** Stable name of the kind of problem. */
  public String code() {
    return rule.code();
  }

  /** How much it matters. */
  public Severity severity() {
    return rule.severity();
  }

  /** Whether it is an error. */
  public boolean isError() {
    return rule.severity() == Severity.ERROR;
  }

  /** The same problem at another place. */
  public Problem at(Place other) {
    return new Problem(rule, other, found, expected);
  }

  /** The problem without its place: found, expected, source, remedy. Safe for a terminal. */
  public String message() {
    return Printable.text(found)
        + "; expected "
        + Printable.text(expected)
        + " ("
        + rule.source()
        + "). To do: "
        + rule.remedy()
        + ".";
  }

  /** The whole problem in one line of text. Safe for a terminal. */
  public String sentence() {
    String where = place.words();
    return where.isEmpty() ? message() : where + ": " + message();
  }
}
