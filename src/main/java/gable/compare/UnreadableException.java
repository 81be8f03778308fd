package gable.compare;

import gable.opc.Problem;
import java.nio.file.Path;

/** One of two files cannot be read; the message says which, where and why. */
public final class UnreadableException extends Exception {

  private static final long serialVersionUID = 1;

  UnreadableException(Path file, Problem problem, Throwable cause) {
    super(file + ": " + problem.sentence(), cause);
  }
}
