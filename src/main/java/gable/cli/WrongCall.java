package gable.cli;

/** A call that cannot be meant; the message says what is wrong with it, for people. */
final class WrongCall extends Exception {

  private static final long serialVersionUID = 1L;

  WrongCall(String message) {
    super(message);
  }
}
