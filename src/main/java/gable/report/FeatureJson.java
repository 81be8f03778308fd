package gable.report;

import com.fasterxml.jackson.core.JsonGenerator;
import gable.feature.Pin;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.pipeline.Change;
import gable.pipeline.FeatureResult;
import gable.pipeline.Joints;
import gable.pipeline.ObjectPlace;
import gable.pipeline.ObjectResult;
import gable.pipeline.Outcome;
import gable.plan.Measure;
import gable.plan.Reason;
import java.io.IOException;

/** Writes the entries of {@code features}: one for each feature at each place of its object. */
final class FeatureJson {

  private final JsonGenerator json;
  private final boolean inspection;
  private final Joints joints;

  FeatureJson(JsonGenerator json, boolean inspection, Joints joints) {
    this.json = json;
    this.inspection = inspection;
    this.joints = joints;
  }

  /** All features of an object, at the first place all, then at the next. */
  void write(ObjectResult.Examined object) throws IOException {
    for (int use = 0; use < object.place().uses().size(); use++) {
      for (FeatureResult feature : object.features()) {
        write(object.place(), use, feature);
      }
    }
  }

  private void write(ObjectPlace place, int use, FeatureResult result) throws IOException {
    json.writeStartObject();
    json.writeStringField("id", place.featureId(result.feature().id(), use));
    json.writeStringField("kind", FeatureView.of(result.feature(), Affine3.IDENTITY).kind());
    json.writeStringField("part", place.part());
    json.writeNumberField("objectId", place.objectId());
    json.writeNumberField("item", place.uses().get(use).item());
    geometry(place.uses().get(use).fromFirst(), result);
    new PairJson(json, false).ofFeature(joints, place, use, result.feature().id());
    outcome(result.outcome());
    if (result.reason().isPresent()) {
      reason(result.reason().get());
    }
    json.writeArrayFieldStart("changes");
    for (Change change : result.changes()) {
      write(change);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void geometry(Affine3 toPlace, FeatureResult result) throws IOException {
    FeatureView view = FeatureView.of(result.feature(), toPlace);
    vector(json, "axisPoint", view.middle());
    vector(json, "axisDirection", view.direction());
    vector(json, "start", view.start());
    vector(json, "end", view.end());
    json.writeNumberField("diameterMm", Figures.plain(view.diameter()));
    json.writeNumberField("tiltDeg", Figures.plain(Math.toDegrees(view.feature().tilt())));
    json.writeStringField("shape", view.shape());
    json.writeNumberField("facets", view.feature().facetsPerTurn());
    json.writeNumberField("fitErrorMm", Figures.plain(view.feature().residual()));
    json.writeNumberField("group", view.group());
    json.writeArrayFieldStart("ends");
    for (String end : view.ends()) {
      json.writeString(end);
    }
    json.writeEndArray();
    if (!view.screw().isEmpty()) {
      json.writeStringField("screwSeat", view.screw());
    }
    if (view.feature() instanceof Pin pin) {
      json.writeNumberField("freeLengthMm", Figures.plain(pin.length()));
      json.writeStringField("lie", pin.isUpright() ? "upright" : "horizontal");
    }
  }

  private void write(Change change) throws IOException {
    json.writeStartObject();
    json.writeStringField("by", change.by());
    outcome(change.outcome());
    if (change.reason().isPresent()) {
      reason(change.reason().get());
    } else {
      json.writeStringField("profile", change.profile());
    }
    for (Measure measure : change.measures()) {
      json.writeNumberField(Figures.key(measure), Figures.plain(Figures.shown(measure)));
    }
    json.writeEndObject();
  }

  private void outcome(Outcome outcome) throws IOException {
    boolean planned = outcome == Outcome.RESHAPED && inspection;
    json.writeStringField("outcome", planned ? "planned" : Figures.word(outcome));
  }

  private void reason(Reason reason) throws IOException {
    json.writeObjectFieldStart("reason");
    json.writeStringField("code", reason.code());
    json.writeStringField("message", reason.sentence());
    json.writeEndObject();
  }

  /** A field with the three coordinates of a point or direction. */
  static void vector(JsonGenerator json, String name, Vec3 v) throws IOException {
    json.writeArrayFieldStart(name);
    json.writeNumber(Figures.plain(v.x()));
    json.writeNumber(Figures.plain(v.y()));
    json.writeNumber(Figures.plain(v.z()));
    json.writeEndArray();
  }
}
