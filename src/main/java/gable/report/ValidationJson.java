package gable.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.PrettyPrinter;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import gable.opc.Problem;
import gable.pipeline.Validated;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Optional;

/**
 * What was found in files as JSON, schema {@code gable-validation/1}: one object for each file. The
 * same result gives the same text.
 */
public final class ValidationJson {

  /** Name of the schema. */
  public static final String SCHEMA = "gable-validation/1";

  private final Tool tool;

  /**
   * Reports of one run.
   *
   * @param tool who makes them
   */
  public ValidationJson(Tool tool) {
    this.tool = tool;
  }

  /** One object over several lines, for a single file. Ends with a line feed. */
  public String pretty(Validated result) {
    DefaultIndenter indent = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter().withObjectIndenter(indent);
    return text(result, Optional.of(printer));
  }

  /** One object in one line, for one of several files. Ends with a line feed. */
  public String line(Validated result) {
    return text(result, Optional.empty());
  }

  private String text(Validated result, Optional<PrettyPrinter> printer) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      printer.ifPresent(json::setPrettyPrinter);
      write(json, result);
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot fail", e);
    }
    return text.append('\n').toString();
  }

  private void write(JsonGenerator json, Validated result) throws IOException {
    json.writeStartObject();
    json.writeStringField("schema", SCHEMA);
    json.writeObjectFieldStart("tool");
    json.writeStringField("name", tool.name());
    json.writeStringField("version", tool.version());
    json.writeEndObject();
    json.writeStringField("file", result.source().name());
    json.writeStringField("sha256", result.source().sha256());
    json.writeStringField("verdict", result.validation().verdict().word());
    json.writeArrayFieldStart("findings");
    for (Problem finding : result.validation().findings()) {
      write(json, ValidationText.word(result, finding), finding);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static void write(JsonGenerator json, String severity, Problem finding)
      throws IOException {
    json.writeStartObject();
    json.writeStringField("severity", severity);
    json.writeStringField("code", finding.code());
    json.writeStringField("section", finding.rule().source());
    json.writeStringField("part", finding.place().part());
    json.writeStringField("path", finding.place().path());
    json.writeNumberField("line", finding.place().line());
    json.writeNumberField("column", finding.place().column());
    json.writeStringField("found", finding.found());
    json.writeStringField("expected", finding.expected());
    json.writeStringField("remedy", finding.rule().remedy());
    json.writeEndObject();
  }
}
