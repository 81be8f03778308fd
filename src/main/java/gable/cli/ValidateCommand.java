package gable.cli;

import gable.pipeline.Gable;
import gable.pipeline.Validated;
import gable.report.Tool;
import gable.report.ValidationJson;
import gable.report.ValidationText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** {@code gable validate FILE...}: holds files against the standard. */
final class ValidateCommand {

  private final Given call;
  private final Streams streams;

  ValidateCommand(Given call, Streams streams) {
    this.call = call;
    this.streams = streams;
  }

  int run() throws WrongCall {
    Wishes wishes = new Wishes(call);
    List<String> files = call.files();
    Ends ends = new Ends(streams);
    ends.refuseReportOver(wishes.json(), files, List.of());
    boolean dataOnOut = wishes.json().filter(Ends.STANDARD::equals).isPresent();
    Streams telling = dataOnOut ? streams.withTextOnErr() : streams;
    List<Validated> results = new ArrayList<>();
    int code = ExitCode.DONE;
    for (String file : files) {
      Validated result = Gable.validate(ends.input(file));
      results.add(result);
      code = Math.max(code, code(result));
      if (!wishes.quiet() || code(result) != ExitCode.DONE) {
        String text = new ValidationText(wishes.quiet()).text(result);
        (wishes.quiet() ? telling.err() : telling.text()).print(text);
      }
    }
    Optional<String> json = wishes.json();
    return json.isPresent() ? Math.max(code, ends.writeReport(json.get(), json(results))) : code;
  }

  private static String json(List<Validated> results) {
    ValidationJson json = new ValidationJson(Tool.here());
    if (results.size() == 1) {
      return json.pretty(results.get(0));
    }
    StringBuilder lines = new StringBuilder();
    results.forEach(result -> lines.append(json.line(result)));
    return lines.toString();
  }

  private static int code(Validated result) {
    return switch (result.validation().verdict()) {
      case PASS, WARN -> ExitCode.DONE;
      case FAIL -> ExitCode.NOT_MET;
      case UNREAD -> ExitCode.INVALID;
    };
  }
}
