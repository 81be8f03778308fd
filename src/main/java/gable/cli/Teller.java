package gable.cli;

import gable.pipeline.FileResult;
import gable.pipeline.Settings;
import gable.report.Cautions;
import gable.report.JsonReport;
import gable.report.TextReport;
import gable.report.Tool;
import gable.report.Words;
import java.util.List;
import java.util.Optional;

/** Tells the results of a run: the table for people, JSON for programs, refusals for both. */
final class Teller {

  private static final String STANDARD = "-";

  private final Streams streams;
  private final Settings settings;
  private final Optional<String> json;
  private final boolean inspection;
  private final boolean quiet;

  /** One for the run that the wishes and settings describe. */
  Teller(Streams streams, Wishes wishes, Settings settings, boolean inspection) {
    boolean dataOnOut = wishes.json().filter(STANDARD::equals).isPresent();
    this.streams = dataOnOut ? streams.withTextOnErr() : streams;
    this.settings = settings;
    this.json = wishes.json();
    this.inspection = inspection;
    this.quiet = wishes.quiet();
  }

  /** Says something about the run as a whole. */
  void remark(String words) {
    if (!quiet) {
      streams.text().println("note: " + words);
    }
  }

  /** Tells all results and gives the exit code. */
  int tell(List<FileResult> results) {
    int code = ExitCode.DONE;
    for (FileResult result : results) {
      code = Math.max(code, code(result));
      tell(result);
    }
    if (!inspection && !quiet && results.stream().anyMatch(Teller::changed)) {
      streams.text().println(Cautions.SHORT);
    }
    return json.isPresent()
        ? Math.max(code, new Ends(streams).writeReport(json.get(), jsonText(results)))
        : code;
  }

  private void tell(FileResult result) {
    refusal(result)
        .ifPresent(
            why ->
                streams.err().println("gable: " + Words.safe(result.source().name()) + ": " + why));
    boolean more = refusal(result).isEmpty() || result.objects().size() > 1;
    if (!quiet && more) {
      streams.text().print(new TextReport(settings, inspection).text(result));
    }
  }

  private String jsonText(List<FileResult> results) {
    JsonReport report = new JsonReport(Tool.here(), settings, inspection);
    if (results.size() == 1) {
      return report.pretty(results.get(0));
    }
    StringBuilder lines = new StringBuilder();
    results.forEach(result -> lines.append(report.line(result)));
    return lines.toString();
  }

  private static boolean changed(FileResult result) {
    return result.fold(new Judgement<>(true, false, rejected -> false));
  }

  private static int code(FileResult result) {
    return result.fold(
        new Judgement<>(
            ExitCode.DONE,
            ExitCode.DONE,
            rejected ->
                switch (rejected.cause()) {
                  case INVALID -> ExitCode.INVALID;
                  case NOTHING_EXAMINED -> ExitCode.NOTHING_EXAMINED;
                  case NOT_WRITTEN -> ExitCode.NOT_WRITTEN;
                }));
  }

  private static Optional<String> refusal(FileResult result) {
    return result.fold(
        new Judgement<>(
            Optional.empty(),
            Optional.empty(),
            rejected -> Optional.of(rejected.reason().sentence())));
  }

  /** Cases with fixed answers but for refusals. */
  private record Judgement<T>(
      T changed, T unchanged, java.util.function.Function<FileResult.Rejected, T> rejection)
      implements FileResult.Cases<T> {

    @Override
    public T changed(FileResult.Changed result) {
      return changed;
    }

    @Override
    public T unchanged(FileResult.Unchanged result) {
      return unchanged;
    }

    @Override
    public T rejected(FileResult.Rejected result) {
      return rejection.apply(result);
    }
  }
}
