package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gable.geom.Vec3;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.place.Placements;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the command does to parts whose truth is known because another kernel made them: the files
 * beside {@code *.truth.json}, made and described by {@code src/test/reference/corpus}. Volumes are
 * that kernel's booleans (Manifold).
 */
class TruthTest {

  /** A diameter may be off by a thousandth or two micrometres, an axis by two micrometres. */
  private static final double SIZE = 1e-3;

  private static final double PLACE = 2e-3;

  /** Steps of written coordinates and of single precision at 300 mm. */
  private static final double GRID = 2e-5;

  /** A tenth of the thinnest usual layer: how far a flank may be set into a wall that strays. */
  private static final double HAIR = 0.01;

  @TempDir private Path temporary;

  static List<Path> truths() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("fixtures"))) {
      return files.filter(file -> file.toString().endsWith(".truth.json")).sorted().toList();
    }
  }

  @ParameterizedTest
  @MethodSource("truths")
  void findsEveryBoreWhereItIsAndDoesWhatItNeeds(Path file) throws IOException {
    JsonNode truth = new ObjectMapper().readTree(file.toFile());
    JsonNode report = report(file);
    double noise = truth.get("noiseMm").doubleValue();
    List<JsonNode> unexplained = new ArrayList<>();
    report.get("features").forEach(unexplained::add);

    for (JsonNode bore : truth.get("features")) {
      List<JsonNode> same =
          unexplained.stream().filter(feature -> alike(bore, feature, noise)).toList();
      if (bore.get("find").textValue().equals("must")) {
        assertThat(same).as("features at %s", bore.get("point")).hasSize(1);
        PlaceAndSize.of(bore).check(same.get(0), noise);
      }
      for (JsonNode feature : same) {
        checkOutcome(bore, feature);
      }
      unexplained.removeAll(same);
    }
    assertThat(unexplained).as("features that are none").isEmpty();
  }

  @ParameterizedTest
  @MethodSource("truths")
  void takesAwayWhatTheOtherKernelTakes(Path file) throws IOException, PackageException {
    JsonNode truth = new ObjectMapper().readTree(file.toFile());
    JsonNode volumes = truth.get("volumeMm3");
    if (volumes == null) {
      return; // more than one answer is right
    }
    report(file);
    double taken = volume(input(file)) - volume(temporary.resolve("out.3mf"));

    double noise = truth.get("noiseMm").doubleValue();
    double due = volumes.get("before").doubleValue() - volumes.get("ideal").doubleValue();
    assertThat(taken).isCloseTo(due, within(roofArea(truth) * slack(noise)));
  }

  /**
   * How far the planes of a roof may be off: the grid, the noise, and the hair that noise costs.
   */
  private static double slack(double noise) {
    return GRID + 2 * noise + (noise > 0 ? HAIR : 0);
  }

  /** Both planes of every roof: at 45 degrees each is as wide as the radius. */
  private static double roofArea(JsonNode truth) {
    double area = 0;
    for (JsonNode bore : truth.get("features")) {
      if (bore.get("expect").textValue().equals("reshape")) {
        double length = bore.at("/range/1/1").doubleValue() - bore.at("/range/0/0").doubleValue();
        double diameter = bore.get("diameterMm").doubleValue();
        area += diameter * length;
      }
    }
    return area;
  }

  private JsonNode report(Path truth) throws IOException {
    Path report = temporary.resolve("report.json");
    Call call =
        Call.of(
            "reshape",
            input(truth).toString(),
            "-o",
            temporary.resolve("out.3mf").toString(),
            "--json",
            report.toString(),
            "--quiet");
    assertThat(call.code()).as(call.err()).isZero();
    return new ObjectMapper().readTree(report.toFile());
  }

  private static Path input(Path truth) {
    return Path.of(truth.toString().replaceFirst("\\.truth\\.json$", ".3mf"));
  }

  private static double volume(Path file) throws IOException, PackageException {
    try (OpcPackage source = OpcPackage.open(file, OpcLimits.DEFAULT)) {
      ModelPackage model = ModelPackage.read(source, ModelLimits.USUAL);
      return Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed().stream()
          .mapToDouble(placed -> placed.printMesh().volume())
          .sum();
    }
  }

  private static void checkOutcome(JsonNode bore, JsonNode feature) {
    String outcome = feature.get("outcome").textValue();
    switch (bore.get("expect").textValue()) {
      case "reshape" -> assertThat(outcome).as("%s", feature).isEqualTo("reshaped");
      case "leave" -> assertThat(outcome).as("%s", feature).isEqualTo("left");
      default -> assertThat(outcome).isIn("reshaped", "left");
    }
  }

  /** Is the feature the true one? A hole that is no bore may be named in parts. */
  private static boolean alike(JsonNode truth, JsonNode feature, double noise) {
    PlaceAndSize is = PlaceAndSize.of(truth);
    boolean strict = truth.get("find").textValue().equals("must");
    double size = feature.get("diameterMm").doubleValue() / is.diameter();
    double middle = is.along(vector(feature.get("axisPoint")));
    double inside = is.high() - is.low();
    return truth.get("item").equals(feature.get("item"))
        && Math.abs(size - 1) < (strict ? 0.05 : 0.6)
        && is.distance(vector(feature.get("axisPoint"))) < (strict ? 0.05 : 1) * is.diameter()
        && middle > is.low() - noise - 0.25 * inside
        && middle < is.high() + noise + 0.25 * inside;
  }

  private static Vec3 vector(JsonNode node) {
    return new Vec3(
        node.get(0).doubleValue(), node.get(1).doubleValue(), node.get(2).doubleValue());
  }

  /** Axis, size and stretch of a true feature. */
  private record PlaceAndSize(
      Vec3 point, Vec3 direction, double diameter, double low, double high) {

    static PlaceAndSize of(JsonNode truth) {
      JsonNode range = truth.get("range");
      return new PlaceAndSize(
          vector(truth.get("point")),
          vector(truth.get("direction")),
          truth.get("diameterMm").doubleValue(),
          range == null ? truth.at("/wall/0").doubleValue() : range.at("/0/0").doubleValue(),
          range == null ? truth.at("/wall/1").doubleValue() : range.at("/1/1").doubleValue());
    }

    double along(Vec3 p) {
      return p.minus(point).dot(direction);
    }

    double distance(Vec3 p) {
      return p.minus(point).cross(direction).norm();
    }

    void check(JsonNode feature, double noise) {
      assertThat(feature.get("diameterMm").doubleValue())
          .isCloseTo(diameter, within(Math.max(SIZE * diameter, PLACE) + 3 * noise));
      for (String end : List.of("start", "end")) {
        Vec3 place = vector(feature.get(end));
        assertThat(distance(place)).as("axis at its %s", end).isLessThan(PLACE + 3 * noise);
        assertThat(along(place)).isBetween(low - PLACE - 3 * noise, high + PLACE + 3 * noise);
      }
    }
  }
}
