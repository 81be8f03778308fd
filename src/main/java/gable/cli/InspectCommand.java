package gable.cli;

import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import java.util.ArrayList;
import java.util.List;

/** {@code gable inspect FILE...}: lists what there is and what would be done. */
final class InspectCommand {

  private final Given call;
  private final Streams streams;

  InspectCommand(Given call, Streams streams) {
    this.call = call;
    this.streams = streams;
  }

  int run() throws WrongCall {
    Gable gable = Installed.gable(call);
    Wishes wishes = new Wishes(call);
    Settings settings = wishes.settings(gable.names());
    List<String> files = call.files();
    Ends ends = new Ends(streams);
    ends.refuseReportOver(wishes.json(), files, List.of());
    Teller teller = new Teller(streams, wishes, settings, true);
    wishes.remark().ifPresent(teller::remark);
    List<FileResult> results = new ArrayList<>();
    for (String file : files) {
      results.add(gable.inspect(ends.input(file), settings, Observer.NONE));
    }
    return teller.tell(results);
  }
}
