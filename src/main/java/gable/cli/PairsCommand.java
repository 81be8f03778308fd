package gable.cli;

import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Observer;
import gable.pipeline.PairsResult;
import gable.pipeline.Settings;
import gable.report.PairsReport;
import gable.report.Tool;
import gable.report.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** {@code gable pairs FILE...}: tells which pins belong to which bores. */
final class PairsCommand {

  private final Given call;
  private final Streams streams;

  PairsCommand(Given call, Streams streams) {
    this.call = call;
    this.streams = streams;
  }

  int run() throws WrongCall {
    Wishes wishes = new Wishes(call);
    Settings settings =
        Settings.usual()
            .withUp(wishes.up())
            .withThreads(Runtime.getRuntime().availableProcessors());
    List<String> files = call.files();
    Ends ends = new Ends(streams);
    ends.refuseReportOver(wishes.json(), files, List.of());
    List<Input> inputs = new ArrayList<>();
    for (String file : files) {
      inputs.add(ends.input(file));
    }
    PairsResult result = Gable.pairs(inputs, settings, Observer.NONE);
    PairsReport report = new PairsReport(result);
    int code = told(result);
    boolean dataOnOut = wishes.json().filter(Ends.STANDARD::equals).isPresent();
    if (!wishes.quiet()) {
      (dataOnOut ? streams.err() : streams.text()).print(report.text());
    }
    Optional<String> json = wishes.json();
    return json.isPresent()
        ? Math.max(code, ends.writeReport(json.get(), report.json(Tool.here(), settings)))
        : code;
  }

  /** Says what could not be looked at; the exit code. */
  private int told(PairsResult result) {
    int code = ExitCode.DONE;
    for (PairsResult.Looked file : result.files()) {
      String name = "gable: " + Words.safe(file.source().name()) + ": ";
      if (file.refusal().isPresent()) {
        streams.err().println(name + file.refusal().get().sentence());
        code = Math.max(code, ExitCode.INVALID);
      } else if (file.nothing()) {
        streams.err().println(name + "no object in it could be examined");
        code = Math.max(code, ExitCode.NOTHING_EXAMINED);
      }
    }
    return code;
  }
}
