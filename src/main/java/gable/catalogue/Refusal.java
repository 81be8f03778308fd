package gable.catalogue;

/** A run over a folder that cannot begin or go on; the message says why and what to do. */
public final class Refusal extends Exception {

  private static final long serialVersionUID = 1L;

  private final Kind kind;

  /** What is wrong. */
  public enum Kind {
    /** The two folders cannot be meant. */
    CALL,
    /** The input folder cannot be read. */
    INPUT,
    /** The output folder cannot be written. */
    OUTPUT
  }

  Refusal(Kind kind, String message) {
    super(message);
    this.kind = kind;
  }

  /** What is wrong. */
  public Kind kind() {
    return kind;
  }
}
