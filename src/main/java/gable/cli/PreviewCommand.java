package gable.cli;

import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import gable.report.Shapes;
import java.util.List;
import java.util.Optional;

/** {@code gable preview FILE -o REPORT}: shows what would be done; writes nothing else. */
final class PreviewCommand {

  private final Given call;
  private final Streams streams;

  PreviewCommand(Given call, Streams streams) {
    this.call = call;
    this.streams = streams;
  }

  int run() throws WrongCall {
    Gable gable = Installed.gable(call);
    Wishes wishes = new Wishes(call);
    Settings settings = wishes.settings(gable.names());
    String target = call.value(Grammar.OUT).orElseThrow();
    Ends ends = new Ends(streams);
    ends.refuseReportOver(Optional.of(target), call.files(), List.of());
    ReportFile report = new ReportFile(streams, call, target);
    Streams telling = target.equals(Ends.STANDARD) ? streams.withTextOnErr() : streams;
    Teller teller = new Teller(telling, wishes, settings, true);
    wishes.remark().ifPresent(teller::remark);
    Shapes shapes = new Shapes(Observer.NONE);
    FileResult result = gable.inspect(ends.input(call.files().get(0)), settings, shapes);
    int code = teller.tell(List.of(result));
    return Math.max(code, report.write(result, settings, true, shapes, ""));
  }
}
