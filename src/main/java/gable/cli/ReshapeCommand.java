package gable.cli;

import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import java.util.List;

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
    String file = files.get(0);
    String out = call.value(Grammar.OUT).orElseThrow();
    Ends ends = new Ends(streams);
    ends.refuseReportOver(wishes.json(), files, List.of(out));
    Streams telling = out.equals(Ends.STANDARD) ? streams.withTextOnErr() : streams;
    Teller teller = new Teller(telling, wishes, settings, false);
    wishes.remark().ifPresent(teller::remark);
    FileResult result = gable.reshape(ends.input(file), ends.output(out), settings, Observer.NONE);
    return teller.tell(List.of(result));
  }
}
