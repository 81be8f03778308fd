package gable.cli;

import gable.pipeline.Gable;
import gable.plan.Reshaper;
import gable.report.Cautions;
import gable.report.Tool;
import java.util.Locale;

/** Commands that only tell something. */
final class Listing {

  private Listing() {}

  static int reshapers(Streams streams) {
    for (Reshaper reshaper : Gable.installed().reshapers()) {
      String line = String.format(Locale.ROOT, "%-12s %s", reshaper.name(), reshaper.summary());
      streams.text().println(line);
    }
    return ExitCode.DONE;
  }

  static int cautions(Streams streams) {
    int number = 1;
    for (String caution : Cautions.ALL) {
      streams.text().println(number++ + ". " + caution);
    }
    return ExitCode.DONE;
  }

  static int version(Streams streams) {
    Tool tool = Tool.here();
    streams.text().println(tool.name() + " " + tool.version());
    return ExitCode.DONE;
  }
}
