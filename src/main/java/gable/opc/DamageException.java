package gable.opc;

import java.io.IOException;

/**
 * Tells the reader of a part's stream that the package is damaged or dangerous. Callers who read a
 * stream themselves turn it into a {@link PackageException} with {@link #asPackageException}.
 */
public final class DamageException extends IOException {

  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  DamageException(Problem problem) {
    super(problem.sentence());
    this.problem = problem;
  }

  /** What is wrong. */
  public Problem problem() {
    return problem;
  }

  /**
   * The package exception that an exception while reading a part stands for: the damage, if that is
   * somewhere among its causes, else a failure of the machine to read.
   *
   * @param part name of the part that was read
   */
  public static PackageException asPackageException(String part, Throwable thrown) {
    Throwable cause = thrown;
    for (int depth = 0; cause != null && depth < 16; depth++) {
      if (cause instanceof DamageException damage) {
        return new PackageException(damage.problem(), thrown);
      }
      cause = cause.getCause();
    }
    return new PackageException(
        new Problem(
            ZipRules.UNREADABLE,
            Place.of(part),
            "reading failed (" + thrown.getMessage() + ")",
            "a file that can be read to its end"),
        thrown);
  }
}
