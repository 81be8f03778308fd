package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.opc.Corpus;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.place.Placements;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import gable.verify.MeshCheck;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Parts that people drew and gave away. Source: Thingi10K, an open research data set; the sizes of
 * the bores stand in the notes that lie beside the files.
 */
class RealPartsTest {

  @TempDir private Path temporary;

  private Path out() {
    return temporary.resolve("out.3mf");
  }

  @Test
  void aRingOfThirtyTwoBoresGetsThirtyTwoRoofs() throws IOException {
    JsonNode features = reshaped("real/88566-z.3mf");

    List<Double> diameters = new ArrayList<>();
    for (JsonNode feature : features) {
      if (feature.get("outcome").textValue().equals("reshaped")) {
        diameters.add(feature.get("diameterMm").doubleValue());
      }
    }
    // 40 facets: sizes are told to a hundredth of a millimetre in the notes
    assertThat(diameters).hasSize(32).allSatisfy(d -> assertThat(d).isBetween(5.995, 6.005));
  }

  @Test
  void aPlateWithBoresOfFourSizesShowsThemAll() throws IOException {
    JsonNode features = reshaped("real/73416-x.3mf");

    assertThat(count(features, 10.5)).isEqualTo(1);
    assertThat(count(features, 5)).isEqualTo(4);
    assertThat(count(features, 3.5)).isEqualTo(4);
    assertThat(count(features, 3)).isEqualTo(4);
  }

  @Test
  void aPartWithoutAFullBoreAndOneInInchesComeOutByteForByte() throws IOException {
    for (String name :
        List.of("real/79741-z.3mf", "examples/lib3mf_CPP_UnitTests_3mfbase11_AdjMount.3mf")) {
      reshaped(name);
      assertThat(out()).hasSameBinaryContentAs(Corpus.file(name));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"real/88566-z.3mf", "real/73416-x.3mf", "real/72214-x.3mf"})
  void theOutputIsNoWorseThanTheInputAndASecondRunChangesNothing(String name)
      throws IOException, PackageException {
    reshaped(name);
    MeshCheck.Report before = MeshCheck.of(mesh(Corpus.file(name)));
    MeshCheck.Report after = MeshCheck.of(mesh(out()));

    assertThat(after.closed()).isTrue();
    assertThat(after.genus()).isEqualTo(before.genus());
    assertThat(after.shells()).isEqualTo(before.shells());
    assertThat(after.flatFacets()).isLessThanOrEqualTo(before.flatFacets());
    assertThat(after.pinchedVertices()).isLessThanOrEqualTo(before.pinchedVertices());
    assertThat(after.crossings()).isLessThanOrEqualTo(before.crossings());

    Path again = temporary.resolve("again.3mf");
    assertThat(Call.of("reshape", out().toString(), "-o", again.toString()).code()).isZero();
    assertThat(again).hasSameBinaryContentAs(out());
  }

  private static long count(JsonNode features, double diameter) {
    long count = 0;
    for (JsonNode feature : features) {
      count += Math.abs(feature.get("diameterMm").doubleValue() - diameter) < 0.005 ? 1 : 0;
    }
    return count;
  }

  private JsonNode reshaped(String name) throws IOException {
    Path report = temporary.resolve("report.json");
    Call call =
        Call.of(
            "reshape",
            Corpus.file(name).toString(),
            "-o",
            out().toString(),
            "--json",
            report.toString(),
            "--quiet");
    assertThat(call.code()).as(call.err()).isZero();
    return new ObjectMapper().readTree(report.toFile()).get("features");
  }

  private static Mesh mesh(Path file) throws IOException, PackageException {
    try (OpcPackage source = OpcPackage.open(file, OpcLimits.DEFAULT)) {
      ModelPackage model = ModelPackage.read(source, ModelLimits.USUAL);
      return Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed().get(0).printMesh();
    }
  }
}
