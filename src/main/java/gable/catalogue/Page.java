package gable.catalogue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import gable.report.Cautions;
import gable.report.Look;
import gable.report.Tool;
import gable.report.Words;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * The results as one page that can be opened from the disk. The models are in it as data, of which
 * the page shows some at a time, so that ten thousand are no burden; pictures are files beside it
 * that are loaded when they come into sight.
 */
final class Page {

  private final List<Row> rows;
  private final Tally tally;

  Page(List<Row> rows, Tally tally) {
    this.rows = rows;
    this.tally = tally;
  }

  String text() {
    Tool tool = Tool.here();
    return Look.fill(
        Look.resource("/gable/catalogue/page.html"),
        Map.of(
            "look", Look.css(),
            "lead", lead(),
            "skipped", skipped(),
            "totals", totals(),
            "caution", Look.html(Cautions.SHORT),
            "tool", Look.html(tool.name() + " " + tool.version()),
            "data", Look.inScript(data()),
            "script", Look.resource("/gable/catalogue/page.js")));
  }

  private String lead() {
    return String.format(
        Locale.ROOT,
        "%d %s: %d changed, %d as they were, %d rejected. %d %s reshaped, %d left that may hang in"
            + " the air.",
        tally.models(),
        tally.models() == 1 ? "model" : "models",
        tally.changed(),
        tally.unchanged(),
        tally.rejected(),
        tally.reshaped(),
        tally.reshaped() == 1 ? "feature was" : "features were",
        tally.open());
  }

  private String skipped() {
    if (tally.skipped().isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("<details><summary>");
    text.append(tally.skipped().size());
    text.append(" names were not looked at: links that are not followed, or what cannot be read");
    text.append("</summary><ul>");
    tally.skipped().forEach(name -> text.append("<li>").append(Look.html(name)).append("</li>"));
    return text.append("</ul></details>").toString();
  }

  private String totals() {
    double before = rows.stream().mapToDouble(Row::before).sum();
    double after = rows.stream().mapToDouble(Row::after).sum();
    StringBuilder text = new StringBuilder("<table><tbody>");
    total(text, "Overhang before, mm²", Table.area(before));
    total(text, "Overhang after, mm²", Table.area(after));
    total(text, "Warnings, and objects that could not be worked on", "" + tally.remarks());
    reasons().forEach((code, count) -> total(text, "Left or rejected: " + code, "" + count));
    return text.append("</tbody></table>").toString();
  }

  private static void total(StringBuilder text, String what, String value) {
    text.append("<tr><th scope=\"row\">").append(Look.html(what));
    text.append("</th><td class=\"n\">").append(Look.html(value)).append("</td></tr>");
  }

  /** How often each reason occurs, in features, or in models for causes of rejection. */
  private Map<String, Integer> reasons() {
    Map<String, Integer> all = new TreeMap<>();
    for (Row row : rows) {
      row.reasons().forEach((code, count) -> all.merge(code, count, Integer::sum));
      if (row.isRejected()) {
        all.merge(row.cause(), 1, Integer::sum);
      }
    }
    return all;
  }

  private String data() {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.writeStartObject();
      json.writeObjectFieldStart("reasons");
      for (Map.Entry<String, Integer> each : reasons().entrySet()) {
        json.writeNumberField(each.getKey(), each.getValue());
      }
      json.writeEndObject();
      json.writeArrayFieldStart("models");
      for (Row row : rows) {
        write(json, row);
      }
      json.writeEndArray();
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot fail", e);
    }
    return text.toString();
  }

  private static void write(JsonGenerator json, Row row) throws IOException {
    json.writeStartObject();
    json.writeStringField("file", row.file());
    if (!Words.safe(row.file()).equals(row.file())) {
      json.writeStringField("shown", Words.safe(row.file()));
    }
    json.writeStringField("stem", Folder.about(row.file(), ""));
    json.writeStringField("result", row.result());
    json.writeStringField("cause", row.cause());
    json.writeStringField("message", row.message());
    json.writeNumberField("reshaped", row.reshaped());
    json.writeNumberField("left", row.left());
    json.writeNumberField("open", row.open());
    json.writeNumberField("before", Math.round(row.before() * 10) / 10.0);
    json.writeNumberField("after", Math.round(row.after() * 10) / 10.0);
    json.writeNumberField("pictures", row.pictures());
    if (row.reported()) {
      json.writeBooleanField("report", true);
    }
    json.writeObjectFieldStart("why");
    for (Map.Entry<String, Integer> each : new TreeMap<>(row.reasons()).entrySet()) {
      json.writeArrayFieldStart(each.getKey());
      json.writeNumber(each.getValue());
      json.writeString(row.sentences().getOrDefault(each.getKey(), ""));
      json.writeEndArray();
    }
    json.writeEndObject();
    json.writeEndObject();
  }
}
