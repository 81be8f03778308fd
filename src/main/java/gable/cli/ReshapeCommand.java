package gable.cli;

import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import gable.report.Digest;
import gable.report.Shapes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** {@code gable reshape FILE -o OUT}: does it. */
final class ReshapeCommand {

  private final Given call;
  private final Streams streams;

  ReshapeCommand(Given call, Streams streams) {
    this.call = call;
    this.streams = streams;
  }

  int run() throws WrongCall {
    Gable gable = Gable.installed();
    Wishes wishes = new Wishes(call);
    Settings settings = wishes.settings(gable.names());
    List<String> files = call.files();
    String out = call.value(Grammar.OUT).orElseThrow();
    Ends ends = new Ends(streams);
    ends.refuseReportOver(wishes.json(), files, List.of(out));
    Optional<String> report = call.value(Grammar.REPORT);
    ends.refuseReportOver(report, files, List.of(out));
    ends.refuseSame(report, wishes.json());
    if (report.isEmpty()) {
      return run(gable, wishes, settings, Observer.NONE, out).code();
    }
    ReportFile page = new ReportFile(streams, call, report.get());
    Shapes shapes = new Shapes(Observer.NONE);
    Run run = run(gable, wishes, settings, shapes, out);
    String hash = written(run.result(), out);
    return Math.max(run.code(), page.write(run.result(), settings, false, shapes, hash));
  }

  /** What came of it. */
  private record Run(FileResult result, int code) {}

  private Run run(Gable gable, Wishes wishes, Settings settings, Observer observer, String out)
      throws WrongCall {
    Ends ends = new Ends(streams);
    String file = call.files().get(0);
    Streams telling = out.equals(Ends.STANDARD) ? streams.withTextOnErr() : streams;
    Teller teller = new Teller(telling, wishes, settings, false);
    wishes.remark().ifPresent(teller::remark);
    FileResult result = gable.reshape(ends.input(file), ends.output(out), settings, observer);
    return new Run(result, teller.tell(List.of(result)));
  }

  /** SHA-256 of what was written; empty where it went down a stream, or nothing was written. */
  private static String written(FileResult result, String out) {
    boolean nothing = result instanceof FileResult.Rejected || out.equals(Ends.STANDARD);
    try {
      return nothing ? "" : Digest.of(Path.of(out));
    } catch (IOException e) {
      return ""; // it was there a moment ago; the report then says that it is not known
    }
  }
}
