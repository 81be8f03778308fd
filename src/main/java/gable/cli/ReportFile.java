package gable.cli;

import gable.pipeline.FileResult;
import gable.pipeline.Settings;
import gable.report.Account;
import gable.report.ComparisonReport;
import gable.report.HtmlReport;
import gable.report.MarkdownReport;
import gable.report.PlainReport;
import gable.report.Shape;
import gable.report.Shapes;
import gable.report.Words;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A report for people in a file, in the format that the call names. */
final class ReportFile {

  private static final String HTML = "html";
  private static final List<String> FORMATS = List.of(HTML, "markdown", "text");

  private final Streams streams;
  private final String format;
  private final String target;

  /**
   * A report that goes to {@code target}.
   *
   * @throws WrongCall if the call names a format that there is not
   */
  ReportFile(Streams streams, Given call, String target) throws WrongCall {
    this.streams = streams;
    this.format = call.value(Grammar.FORMAT).orElse(HTML);
    this.target = target;
    if (!FORMATS.contains(format)) {
      throw new WrongCall(
          Grammar.FORMAT + " is html, markdown or text, not '" + Words.safe(format) + "'");
    }
    Ends.path(target);
  }

  /**
   * Writes it.
   *
   * @param output SHA-256 of the model that was written; empty if it is not known
   * @return the exit code
   */
  int write(FileResult result, Settings settings, boolean inspection, Shapes seen, String output) {
    List<Shape> shapes = seen.of(result);
    Account account = Account.of(result, settings, inspection, shapes, output);
    return write(
        switch (format) {
          case "markdown" -> MarkdownReport.of(account);
          case "text" -> PlainReport.of(account);
          default -> new HtmlReport(account, shapes, settings, true).page();
        });
  }

  /** Writes a comparison; the exit code. */
  int write(ComparisonReport report) {
    return write(
        switch (format) {
          case "markdown" -> report.markdown();
          case "text" -> report.text();
          default -> report.page();
        });
  }

  private int write(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    try {
      if (target.equals(Ends.STANDARD)) {
        streams.out().write(bytes);
        streams.out().flush();
      } else {
        Files.write(Path.of(target), bytes);
      }
      return ExitCode.DONE;
    } catch (IOException e) {
      String where = Words.safe(target);
      streams
          .err()
          .println("gable: " + where + ": the report cannot be written: " + e.getMessage());
      return ExitCode.NOT_WRITTEN;
    }
  }
}
