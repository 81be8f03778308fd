package gable.cli;

import gable.pipeline.Gable;
import gable.plan.Reshaper;
import gable.report.Cautions;
import gable.report.Tool;
import gable.report.Words;
import java.util.Locale;

/** Commands that only tell something. */
final class Listing {

  private Listing() {}

  static int reshapers(Gable gable, Streams streams) {
    for (Reshaper reshaper : gable.reshapers()) {
      String line = String.format(Locale.ROOT, "%-12s %s", reshaper.name(), reshaper.summary());
      streams.text().println(line);
      reshaper.settings().forEach(setting -> streams.text().println(setting(setting)));
    }
    gable.notices().forEach(notice -> streams.err().println("gable: " + notice.sentence()));
    return ExitCode.DONE;
  }

  /** One setting: the option, its words up to the first full stop, and its default. */
  private static String setting(String name) {
    return SettingOptions.named(name)
        .map(option -> HelpText.setting(option))
        .orElse("             " + Words.safe(name));
  }

  static int completion(Given call, Streams streams) throws WrongCall {
    String shell = call.files().get(0);
    String script =
        switch (shell) {
          case "bash" -> Completion.bash();
          case "zsh" -> Completion.zsh();
          default ->
              throw new WrongCall("completion is for bash or zsh, not '" + Words.safe(shell) + "'");
        };
    streams.text().print(script);
    return ExitCode.DONE;
  }

  static int manual(Streams streams) {
    streams.text().print(Manual.page());
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
