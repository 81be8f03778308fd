package gable.pipeline;

import gable.opc.PackageException;
import gable.opc.Problem;
import gable.opc.Severity;
import gable.opc.WriteException;
import java.util.List;

/** Turns what the readers found into notices. */
final class Problems {

  private Problems() {}

  static Notice notice(Problem problem) {
    return new Notice(
        problem.code(), level(problem.severity()), problem.place().words(), problem.message());
  }

  static List<Notice> notices(List<Problem> problems) {
    return problems.stream().map(Problems::notice).toList();
  }

  /** The input was refused. */
  static FileResult.Rejected invalid(Source source, PackageException refusal) {
    List<Notice> others =
        refusal.problems().stream()
            .filter(problem -> !problem.equals(refusal.problem()))
            .map(Problems::notice)
            .toList();
    Notice reason = notice(refusal.problem());
    return new FileResult.Rejected(
        source, FileResult.Rejected.Cause.INVALID, reason, List.of(), others);
  }

  /** The output could not be written. */
  static Notice notWritten(WriteException failure) {
    return notice(failure.problem());
  }

  private static Notice.Level level(Severity severity) {
    return switch (severity) {
      case ERROR -> Notice.Level.ERROR;
      case WARNING -> Notice.Level.WARNING;
      case NOTE -> Notice.Level.NOTE;
    };
  }
}
