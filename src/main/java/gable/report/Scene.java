package gable.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Vec3;
import gable.pipeline.FeatureResult;
import gable.pipeline.ObjectPlace;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Base64;
import java.util.List;

/**
 * The surfaces before and after as data for a view that can be turned, as JSON: for each object its
 * vertices (16 bits for each coordinate, over the box of the object), its facets in five groups
 * (both before and after; before only, in walls of bores or elsewhere; after only; new faces), and
 * its places; and for each feature where it is and how large.
 */
final class Scene {

  /** Facets that all objects may have together, so that the page stays well below 8 MB. */
  private static final int MOST_FACETS = 160_000;

  /** An object with so many facets at most is always shown as it is. */
  static final int FEW_FACETS = 2000;

  private static final int STEPS = 65_535;

  private final List<Shape> shapes;

  Scene(List<Shape> shapes) {
    this.shapes = shapes;
  }

  /** The data. */
  String json() {
    long facets = shapes.stream().mapToLong(shape -> shape.before().facetCount()).sum();
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.writeStartObject();
      json.writeArrayFieldStart("objects");
      for (Shape shape : shapes) {
        // each object has its share, a small one all that it needs
        long share = facets == 0 ? 0 : MOST_FACETS * (long) shape.before().facetCount() / facets;
        write(json, shape, (int) Math.min(Math.max(share, FEW_FACETS), MOST_FACETS));
      }
      json.writeEndArray();
      json.writeArrayFieldStart("features");
      for (Shape shape : shapes) {
        features(json, shape);
      }
      json.writeEndArray();
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot fail", e);
    }
    return text.toString();
  }

  private static void features(JsonGenerator json, Shape shape) throws IOException {
    ObjectPlace place = shape.result().place();
    for (FeatureResult each : Notices.features(shape.result())) {
      json.writeStartObject();
      json.writeStringField("id", place.featureId(each.feature().id(), 0));
      json.writeArrayFieldStart("at");
      numbers(json, each.feature().axis().origin());
      json.writeEndArray();
      json.writeArrayFieldStart("axis");
      numbers(json, each.feature().axis().direction());
      json.writeEndArray();
      json.writeNumberField("radius", Figures.plain(each.feature().radius()));
      json.writeEndObject();
    }
  }

  private static void numbers(JsonGenerator json, Vec3 v) throws IOException {
    json.writeNumber(Figures.plain(v.x()));
    json.writeNumber(Figures.plain(v.y()));
    json.writeNumber(Figures.plain(v.z()));
  }

  private static void write(JsonGenerator json, Shape shape, int most) throws IOException {
    Simplified simple = Simplified.of(shape, most);
    Box3 box = box(simple.points());
    json.writeStartObject();
    json.writeArrayFieldStart("low");
    numbers(json, box.min());
    json.writeEndArray();
    json.writeArrayFieldStart("high");
    numbers(json, box.max());
    json.writeEndArray();
    json.writeStringField("points", points(simple.points(), box));
    json.writeArrayFieldStart("groups");
    for (int[] group : simple.groups()) {
      json.writeString(corners(group));
    }
    json.writeEndArray();
    json.writeArrayFieldStart("places");
    for (Affine3 place : shape.places()) {
      place(json, place);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static Box3 box(double[] points) {
    Box3 box = Box3.EMPTY;
    for (int at = 0; at < points.length; at += 3) {
      box = box.with(new Vec3(points[at], points[at + 1], points[at + 2]));
    }
    return points.length == 0 ? Box3.EMPTY.with(Vec3.ZERO) : box;
  }

  /** Column by column, as the library in the page takes it. */
  private static void place(JsonGenerator json, Affine3 m) throws IOException {
    double[] columns = {
      m.m00(), m.m01(), m.m02(), 0, m.m10(), m.m11(), m.m12(), 0,
      m.m20(), m.m21(), m.m22(), 0, m.m30(), m.m31(), m.m32(), 1
    };
    json.writeStartArray();
    for (double number : columns) {
      json.writeNumber(Figures.plain(number));
    }
    json.writeEndArray();
  }

  private static String points(double[] points, Box3 box) {
    ByteBuffer bytes = ByteBuffer.allocate(2 * points.length).order(ByteOrder.LITTLE_ENDIAN);
    for (int at = 0; at < points.length; at++) {
      double low = box.min().get(at % 3);
      double size = Math.max(1e-9, box.max().get(at % 3) - low);
      long step = Math.round((points[at] - low) / size * STEPS);
      bytes.putShort((short) Math.max(0, Math.min(STEPS, step)));
    }
    return Base64.getEncoder().encodeToString(bytes.array());
  }

  private static String corners(int[] corners) {
    ByteBuffer bytes = ByteBuffer.allocate(4 * corners.length).order(ByteOrder.LITTLE_ENDIAN);
    for (int corner : corners) {
      bytes.putInt(corner);
    }
    return Base64.getEncoder().encodeToString(bytes.array());
  }
}
