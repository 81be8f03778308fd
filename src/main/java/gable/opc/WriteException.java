package gable.opc;

/** The result cannot be written. Nothing that was there before is lost; the problem says why. */
public final class WriteException extends Exception {

  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  /** For a problem without a cause in the machine. */
  public WriteException(Problem problem) {
    super(problem.sentence());
    this.problem = problem;
  }

  /** For a problem that the machine reported. */
  public WriteException(Problem problem, Throwable cause) {
    this(problem);
    initCause(cause);
  }

  /** Why. */
  public Problem problem() {
    return problem;
  }
}
