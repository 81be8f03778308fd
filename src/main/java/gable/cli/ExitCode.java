package gable.cli;

/** What the process tells its caller. With several files the highest counts. */
final class ExitCode {

  /** Done; also when there was nothing to change. */
  static final int DONE = 0;

  /** The call is wrong: nothing was read. */
  static final int WRONG_CALL = 2;

  /** The input cannot be read or is not valid. */
  static final int INVALID = 3;

  /** The output cannot be written. */
  static final int NOT_WRITTEN = 4;

  /** Nothing in the input could be examined. */
  static final int NOTHING_EXAMINED = 5;

  /** A gate is not met: the standard forbids what was found, or the caller does. */
  static final int NOT_MET = 6;

  /** A fault of the program itself. */
  static final int INTERNAL = 70;

  private ExitCode() {}
}
