package gable.opc;

import java.util.ArrayList;
import java.util.List;

/**
 * A package that cannot be used. Carries every problem that was found up to the point where reading
 * had to stop; the first error among them is the reason.
 */
public final class PackageException extends Exception {

  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;
  private final transient Problem reason;

  /** For a single problem. */
  public PackageException(Problem reason) {
    this(List.of(reason));
  }

  /**
   * For all problems found.
   *
   * @param problems in the order found, with at least one error
   */
  public PackageException(List<Problem> problems) {
    this(problems, firstError(problems));
  }

  private PackageException(List<Problem> problems, Problem reason) {
    super(reason.sentence());
    this.problems = List.copyOf(problems);
    this.reason = reason;
  }

  /** A problem that an exception of the machine or of a library caused. */
  public PackageException(Problem reason, Throwable cause) {
    this(reason);
    initCause(cause);
  }

  /** The same with the problems that were found before it, unless it holds them already. */
  PackageException after(List<Problem> earlier) {
    if (problems.containsAll(earlier)) {
      return this;
    }
    List<Problem> all = new ArrayList<>(earlier);
    all.addAll(problems);
    PackageException whole = new PackageException(all);
    whole.initCause(this);
    return whole;
  }

  private static Problem firstError(List<Problem> problems) {
    return problems.stream()
        .filter(Problem::isError)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no error among " + problems));
  }

  /** The first error: why the package cannot be used. */
  public Problem problem() {
    return reason;
  }

  /** All problems in the order found, the reason among them. */
  public List<Problem> problems() {
    return problems;
  }

  /** The same with one more step in front of the path of the reason; used while unwinding. */
  public PackageException within(String step) {
    Problem wider = reason.at(reason.place().within(step));
    PackageException same =
        new PackageException(
            problems.stream().map(p -> p.equals(reason) ? wider : p).toList(), wider);
    same.initCause(this);
    return same;
  }
}
