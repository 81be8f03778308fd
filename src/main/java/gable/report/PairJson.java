package gable.report;

import com.fasterxml.jackson.core.JsonGenerator;
import gable.pipeline.Joint;
import gable.pipeline.Joints;
import gable.pipeline.ObjectPlace;
import java.io.IOException;
import java.util.List;
import java.util.function.Function;

/** Writes joints and what cannot be told of them. */
final class PairJson {

  private final JsonGenerator json;
  private final boolean withFiles;

  /**
   * A writer.
   *
   * @param withFiles whether each half says from which file it is
   */
  PairJson(JsonGenerator json, boolean withFiles) {
    this.json = json;
    this.withFiles = withFiles;
  }

  /** The fields {@code pairs} and {@code ambiguities} of an object that has been started. */
  void write(Joints joints, Function<Joint.Side, String> name) throws IOException {
    json.writeArrayFieldStart("pairs");
    for (Joint joint : joints.pairs()) {
      json.writeStartObject();
      json.writeFieldName("pin");
      side(joint.pin());
      json.writeFieldName("bore");
      side(joint.bore());
      measures(joint);
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("ambiguities");
    for (Joints.Uncertain doubt : joints.doubts()) {
      json.writeStartObject();
      json.writeStringField("code", PairWords.code(doubt));
      json.writeStringField("message", PairWords.doubt(doubt, name));
      sides("pins", doubt.pins());
      sides("bores", doubt.bores());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** The field {@code pairs} of a feature, if it is half of a joint. */
  void ofFeature(Joints joints, ObjectPlace place, int use, String local) throws IOException {
    List<Joints.Seen> seen = joints.of(place, use, local);
    if (seen.isEmpty()) {
      return;
    }
    json.writeArrayFieldStart("pairs");
    for (Joints.Seen each : seen) {
      json.writeStartObject();
      fields(each.other());
      measures(each.joint());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void measures(Joint joint) throws IOException {
    json.writeNumberField("clearanceMm", Figures.plain(joint.clearance()));
    json.writeNumberField("leastClearanceMm", Figures.plain(joint.leastClearance()));
    json.writeStringField("by", Figures.word(joint.by()));
  }

  private void sides(String name, List<Joint.Side> sides) throws IOException {
    json.writeArrayFieldStart(name);
    for (Joint.Side side : sides) {
      side(side);
    }
    json.writeEndArray();
  }

  private void side(Joint.Side side) throws IOException {
    json.writeStartObject();
    fields(side);
    json.writeEndObject();
  }

  private void fields(Joint.Side side) throws IOException {
    if (withFiles) {
      json.writeNumberField("file", side.file());
    } else if (side.file() > 0) {
      json.writeNumberField("partner", side.file());
    }
    json.writeArrayFieldStart("ids");
    for (String id : side.ids()) {
      json.writeString(id);
    }
    json.writeEndArray();
    json.writeStringField("part", side.place().part());
    json.writeNumberField("objectId", side.place().objectId());
  }
}
