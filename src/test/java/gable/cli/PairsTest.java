package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code gable pairs}: what it tells people and programs, and how it ends. */
class PairsTest {

  private static final String LAMP = "fixtures/parts/lamp.3mf";
  private static final String OPEN = "fixtures/broken/open-mesh.3mf";

  @TempDir private Path temporary;

  @Test
  void peopleGetOneLineForEachPair() {
    Call call = Call.of("pairs", LAMP);

    assertThat(call.code()).isZero();
    assertThat(call.text())
        .contains("pin 1.P3 in bore 2.B1, clearance 0.70 mm, as placed")
        .contains("pin 1.P4 in bore 3.B1, clearance 0.30 mm, the only one that fits")
        .contains("4 pairs");
  }

  @Test
  void programsGetThemByFileAndId() throws IOException {
    Call call = Call.of("pairs", LAMP, LAMP, "--json", "-", "--quiet");
    JsonNode report = new ObjectMapper().readTree(call.out());

    assertThat(report.get("schema").textValue()).isEqualTo("gable-pairs/1");
    assertThat(report.get("files")).hasSize(2);
    JsonNode placed = report.get("pairs").get(0);
    assertThat(placed.get("pin").get("ids").get(0).textValue()).endsWith("P1");
    assertThat(placed.get("bore").get("file").isInt()).isTrue();
    assertThat(placed.get("clearanceMm").doubleValue()).isCloseTo(0.2, near(1e-5));
    assertThat(report.get("ambiguities").isArray()).isTrue();
  }

  private static org.assertj.core.data.Offset<Double> near(double most) {
    return org.assertj.core.data.Offset.offset(most);
  }

  @Test
  void aFileThatCannotBeReadDoesNotStopTheOthers() throws IOException {
    Path torn = Files.writeString(temporary.resolve("torn.3mf"), "no package");

    Call call = Call.of("pairs", torn.toString(), LAMP);

    assertThat(call.code()).isEqualTo(3);
    assertThat(call.err()).contains("torn.3mf");
    assertThat(call.text()).contains("4 pairs");
  }

  @Test
  void whereNothingCanBeExaminedItSaysSo() {
    Call call = Call.of("pairs", OPEN);

    assertThat(call.code()).isEqualTo(5);
    assertThat(call.err()).contains("no object in it could be examined");
    assertThat(call.text()).contains("0 pairs");
  }

  @Test
  void featuresOfAReportNameTheOtherHalf() throws IOException {
    Path json = temporary.resolve("lamp.json");
    Call.of("inspect", LAMP, "--json", json.toString(), "--quiet");
    JsonNode report = new ObjectMapper().readTree(Files.readString(json, StandardCharsets.UTF_8));

    for (JsonNode feature : report.get("features")) {
      if (feature.get("id").textValue().equals("3.B1")) {
        assertThat(feature.get("pairs").get(0).get("ids").get(0).textValue()).isEqualTo("1.P4");
        assertThat(feature.get("pairs").get(0).get("by").textValue()).isEqualTo("size");
      }
      if (feature.get("id").textValue().equals("1.B3")) {
        assertThat(feature.get("screwSeat").textValue()).isEqualTo("M4");
        assertThat(feature.get("pairs")).isNull();
      }
    }
    assertThat(report.get("pairs")).hasSize(4);
  }
}
