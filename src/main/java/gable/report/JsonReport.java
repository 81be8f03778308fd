package gable.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.PrettyPrinter;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import gable.pipeline.FileResult;
import gable.pipeline.Notice;
import gable.pipeline.ObjectResult;
import gable.pipeline.Settings;
import gable.plan.Limits;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * Results as JSON, schema {@code gable-report/1}: one object for each file. Lengths are in
 * millimetres and angles in degrees, as the names of the fields say. The same result gives the same
 * text.
 */
public final class JsonReport {

  /** Name of the schema. */
  public static final String SCHEMA = "gable-report/1";

  private final Tool tool;
  private final Settings settings;
  private final boolean inspection;

  /**
   * Reports of one run.
   *
   * @param tool who makes them
   * @param settings what the run was asked for
   * @param inspection true if nothing was to be written, so that changes are planned ones
   */
  public JsonReport(Tool tool, Settings settings, boolean inspection) {
    this.tool = tool;
    this.settings = settings;
    this.inspection = inspection;
  }

  /** One object over several lines, for a single file. Ends with a line feed. */
  public String pretty(FileResult result) {
    return pretty(json -> write(json, result, Extension.NONE));
  }

  /** A text over several lines. Ends with a line feed. */
  static String pretty(Extension content) {
    DefaultIndenter indent = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter().withObjectIndenter(indent);
    return text(Optional.of(printer), content);
  }

  /** One object in one line, for one of several files. Ends with a line feed. */
  public String line(FileResult result) {
    return line(result, Extension.NONE);
  }

  /** Like {@link #line}, with fields of somebody else at the end of the object. */
  public String line(FileResult result, Extension extension) {
    return text(Optional.empty(), json -> write(json, result, extension));
  }

  /** The settings of the run alone, in one line; equal settings give equal text. */
  public String settings() {
    return text(
        Optional.empty(),
        json -> {
          json.writeStartObject();
          writeSettings(json);
          json.writeEndObject();
        });
  }

  /** Writes something of its own into a report. */
  public interface Extension {
    /** One who has nothing to add. */
    Extension NONE = json -> {};

    /** Writes fields of an object that has been started. */
    void write(JsonGenerator json) throws IOException;
  }

  private static String text(Optional<PrettyPrinter> printer, Extension content) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      printer.ifPresent(json::setPrettyPrinter);
      content.write(json);
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot fail", e);
    }
    return text.append('\n').toString();
  }

  private void write(JsonGenerator json, FileResult result, Extension extension)
      throws IOException {
    json.writeStartObject();
    json.writeStringField("schema", SCHEMA);
    json.writeObjectFieldStart("tool");
    json.writeStringField("name", tool.name());
    json.writeStringField("version", tool.version());
    json.writeEndObject();
    json.writeStringField("command", inspection ? "inspect" : "reshape");
    json.writeStringField("file", result.source().name());
    json.writeStringField("sha256", result.source().sha256());
    writeSettings(json);
    json.writeStringField("result", outcome(result));
    json.writeArrayFieldStart("notices");
    for (Notice notice : Notices.of(result)) {
      write(json, notice);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("features");
    FeatureJson features = new FeatureJson(json, inspection, result.joints());
    for (ObjectResult.Examined object : Notices.examined(result)) {
      features.write(object);
    }
    json.writeEndArray();
    new PairJson(json, false).write(result.joints(), PairWords::ids);
    extension.write(json);
    json.writeEndObject();
  }

  private void writeSettings(JsonGenerator json) throws IOException {
    json.writeObjectFieldStart("settings");
    json.writeNumberField("slopeDeg", Figures.plain(Math.toDegrees(settings.limits().slope())));
    json.writeNumberField("smallestBoreMm", Figures.plain(settings.limits().smallestBore()));
    number(json, "largestBoreMm", settings.limits().largestBore());
    json.writeNumberField("leastRoofMm", Figures.plain(settings.limits().leastRoof()));
    json.writeNumberField("longestBridgeMm", Figures.plain(settings.limits().longestBridge()));
    Limits.Joint joint = settings.limits().joint();
    number(json, "tipMm", joint.tip().orElse(Double.POSITIVE_INFINITY));
    json.writeNumberField("leadInMm", Figures.plain(joint.leadIn()));
    json.writeNumberField("webWidthMm", Figures.plain(joint.webWidth()));
    json.writeNumberField("clearanceMm", Figures.plain(joint.clearance()));
    json.writeStringField("gusset", Figures.word(joint.webs()));
    FeatureJson.vector(json, "up", settings.up());
    words(json, "only", settings.choice().only());
    words(json, "skip", settings.choice().skip());
    words(json, "with", settings.choice().with());
    words(json, "without", settings.choice().without());
    Settings.Handling handling = settings.handling();
    json.writeStringField("mixedOrientation", Figures.word(handling.mixedOrientation()));
    json.writeStringField("unknownParts", Figures.word(handling.unknownParts()));
    json.writeBooleanField("joinVertices", handling.joinVertices());
    json.writeEndObject();
  }

  /** A number, or null where there is no bound. */
  private static void number(JsonGenerator json, String name, double value) throws IOException {
    if (Double.isInfinite(value)) {
      json.writeNullField(name);
    } else {
      json.writeNumberField(name, Figures.plain(value));
    }
  }

  private static void words(JsonGenerator json, String name, Collection<String> words)
      throws IOException {
    json.writeArrayFieldStart(name);
    for (String word : List.copyOf(words).stream().sorted().toList()) {
      json.writeString(word);
    }
    json.writeEndArray();
  }

  static void write(JsonGenerator json, Notice notice) throws IOException {
    json.writeStartObject();
    json.writeStringField("code", notice.code());
    json.writeStringField("level", Figures.word(notice.level()));
    json.writeStringField("message", notice.message());
    json.writeStringField("place", notice.place());
    json.writeEndObject();
  }

  private static String outcome(FileResult result) {
    return result.fold(
        new FileResult.Cases<>() {
          @Override
          public String changed(FileResult.Changed changed) {
            return "changed";
          }

          @Override
          public String unchanged(FileResult.Unchanged unchanged) {
            return "unchanged";
          }

          @Override
          public String rejected(FileResult.Rejected rejected) {
            return "rejected";
          }
        });
  }
}
