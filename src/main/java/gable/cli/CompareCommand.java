package gable.cli;

import gable.compare.Comparison;
import gable.compare.UnreadableException;
import gable.report.ComparisonReport;
import gable.report.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** {@code gable compare BEFORE AFTER -o REPORT}: what differs between two files. */
final class CompareCommand {

  private final Given call;
  private final Streams streams;

  CompareCommand(Given call, Streams streams) {
    this.call = call;
    this.streams = streams;
  }

  int run() throws WrongCall {
    List<String> files = call.files();
    if (files.contains(Ends.STANDARD)) {
      throw new WrongCall("compare needs two files; it reads none from standard input");
    }
    Path before = Ends.path(files.get(0));
    Path after = Ends.path(files.get(1));
    String target = call.value(Grammar.OUT).orElseThrow();
    new Ends(streams).refuseReportOver(Optional.of(target), files, List.of());
    ReportFile report = new ReportFile(streams, call, target);
    Wishes wishes = new Wishes(call);
    try {
      ComparisonReport made = new ComparisonReport(Comparison.of(before, after, wishes.up()));
      int code = report.write(made);
      if (code == ExitCode.DONE && !wishes.quiet()) {
        (target.equals(Ends.STANDARD) ? streams.err() : streams.text()).println(made.sentence());
      }
      return code;
    } catch (UnreadableException e) {
      streams.err().println("gable: " + Words.safe(String.valueOf(e.getMessage())));
      return ExitCode.INVALID;
    }
  }
}
