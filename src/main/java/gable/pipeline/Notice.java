package gable.pipeline;

/**
 * Something a reader of the result should know that is about no single feature.
 *
 * @param code stable name for programs
 * @param level how much it matters
 * @param place part, element, line and column as far as known, in words; empty for the whole file
 * @param message one or more sentences for people, safe to be shown on a terminal
 */
public record Notice(String code, Level level, String place, String message) {

  /** How much a notice matters. */
  public enum Level {
    /** Good to know. */
    NOTE,
    /** Something may not be as the user expects. */
    WARNING,
    /** Why an object or a file was refused. */
    ERROR
  }

  /** Good to know, about the whole file. */
  public static Notice note(String code, String message) {
    return new Notice(code, Level.NOTE, "", message);
  }

  /** A warning about the whole file. */
  public static Notice warning(String code, String message) {
    return new Notice(code, Level.WARNING, "", message);
  }

  /** Place and message in one line. */
  public String sentence() {
    return place.isEmpty() ? message : place + ": " + message;
  }
}
