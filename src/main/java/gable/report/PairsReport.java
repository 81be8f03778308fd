package gable.report;

import com.fasterxml.jackson.core.JsonGenerator;
import gable.pipeline.Joint;
import gable.pipeline.Notice;
import gable.pipeline.PairsResult;
import gable.pipeline.Settings;
import java.io.IOException;
import java.util.List;
import java.util.function.Function;

/** Which pins and bores of some files belong together, for people and for programs. */
public final class PairsReport {

  /** Name of the schema. */
  public static final String SCHEMA = "gable-pairs/1";

  private final PairsResult result;
  private final Function<Joint.Side, String> name;

  /** The report of a result. */
  public PairsReport(PairsResult result) {
    this.result = result;
    this.name = result.files().size() > 1 ? this::inFile : PairWords::ids;
  }

  private String inFile(Joint.Side side) {
    return PairWords.bare(side) + " of file " + (side.file() + 1);
  }

  /** For people; ends with a line feed. */
  public String text() {
    StringBuilder text = new StringBuilder();
    List<PairsResult.Looked> files = result.files();
    for (int k = 0; k < files.size(); k++) {
      text.append(files.size() > 1 ? (k + 1) + ": " : "");
      text.append(Words.safe(files.get(k).source().name())).append('\n');
      for (Notice notice : files.get(k).notices()) {
        text.append("  ").append(Figures.word(notice.level())).append(": ");
        text.append(notice.sentence()).append('\n');
      }
    }
    result.joints().pairs().forEach(joint -> line(text, PairWords.line(joint, name)));
    result
        .joints()
        .doubts()
        .forEach(doubt -> line(text, "not told: " + PairWords.doubt(doubt, name)));
    int count = result.joints().pairs().size();
    line(text, count == 1 ? "1 pair" : count + " pairs");
    return text.toString();
  }

  private static void line(StringBuilder text, String words) {
    text.append("  ").append(words).append('\n');
  }

  /** For programs: one object over several lines. Ends with a line feed. */
  public String json(Tool tool, Settings settings) {
    return JsonReport.pretty(
        json -> {
          json.writeStartObject();
          json.writeStringField("schema", SCHEMA);
          json.writeObjectFieldStart("tool");
          json.writeStringField("name", tool.name());
          json.writeStringField("version", tool.version());
          json.writeEndObject();
          FeatureJson.vector(json, "up", settings.up());
          json.writeArrayFieldStart("files");
          for (PairsResult.Looked file : result.files()) {
            write(json, file);
          }
          json.writeEndArray();
          new PairJson(json, true).write(result.joints(), name);
          json.writeEndObject();
        });
  }

  private static void write(JsonGenerator json, PairsResult.Looked file) throws IOException {
    json.writeStartObject();
    json.writeStringField("file", file.source().name());
    json.writeStringField("sha256", file.source().sha256());
    json.writeStringField("result", file.refusal().isPresent() ? "rejected" : "examined");
    json.writeArrayFieldStart("notices");
    if (file.refusal().isPresent()) {
      JsonReport.write(json, file.refusal().get());
    }
    for (Notice notice : file.notices()) {
      JsonReport.write(json, notice);
    }
    json.writeEndArray();
    json.writeEndObject();
  }
}
