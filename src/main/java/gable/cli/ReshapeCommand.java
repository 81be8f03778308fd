package gable.cli;

import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import gable.report.Digest;
import gable.report.Shapes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** {@code gable reshape FILE -o OUT}, or in place: does it. */
final class ReshapeCommand {

  private final Given call;
  private final Streams streams;
  private final Ends ends;

  ReshapeCommand(Given call, Streams streams) {
    this.call = call;
    this.streams = streams;
    this.ends = new Ends(streams);
  }

  int run() throws WrongCall {
    Gable gable = Installed.gable(call);
    Wishes wishes = new Wishes(call);
    Settings settings = wishes.settings(gable.names());
    List<String> files = call.files();
    Optional<String> out = out(files);
    List<String> models = out.map(List::of).orElse(files);
    Optional<String> report = call.value(Grammar.REPORT);
    ends.refuseReportOver(wishes.json(), files, models);
    ends.refuseReportOver(report, files, models);
    ends.refuseSame(report, wishes.json());
    Streams telling = models.contains(Ends.STANDARD) ? streams.withTextOnErr() : streams;
    Teller teller = new Teller(telling, wishes, settings, false);
    wishes.remark().ifPresent(teller::remark);
    if (report.isPresent()) {
      ReportFile page = new ReportFile(streams, call, report.get());
      Shapes shapes = new Shapes(Observer.NONE);
      FileResult result = reshaped(gable, files.get(0), out, settings, shapes);
      int code = teller.tell(List.of(result));
      String hash = written(result, models.get(0));
      return Math.max(code, page.write(result, settings, false, shapes, hash));
    }
    List<FileResult> results = new ArrayList<>();
    for (String file : files) {
      results.add(reshaped(gable, file, out, settings, Observer.NONE));
    }
    return teller.tell(results);
  }

  private FileResult reshaped(
      Gable gable, String file, Optional<String> out, Settings settings, Observer observer)
      throws WrongCall {
    return out.isPresent()
        ? gable.reshape(ends.input(file), ends.output(out.get()), settings, observer)
        : new InPlace(gable, settings, call.value(Grammar.BACKUP))
            .reshape(Ends.path(file), observer);
  }

  /** Where the result goes; nothing if it replaces the input. */
  private Optional<String> out(List<String> files) throws WrongCall {
    Optional<String> out = call.value(Grammar.OUT);
    boolean inPlace = call.has(Grammar.IN_PLACE);
    if (out.isPresent() == inPlace) {
      throw new WrongCall(
          inPlace
              ? "--in-place and -o are two answers to one question; give one of them"
              : "the option -o is missing, or --in-place; see gable reshape --help");
    }
    if (!inPlace
        && call.value(Grammar.BACKUP).isPresent()
        && call.origin(Grammar.BACKUP).isEmpty()) {
      throw new WrongCall("--backup needs --in-place; with -o the input stays as it is");
    }
    boolean one = !inPlace || call.has(Grammar.REPORT);
    if (one && files.size() > 1) {
      throw new WrongCall("'" + files.get(1) + "' is one too many; see gable reshape --help");
    }
    if (inPlace && files.contains(Ends.STANDARD)) {
      throw new WrongCall("--in-place needs files; standard input cannot be replaced");
    }
    return out;
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
