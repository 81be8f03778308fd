package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.opc.Corpus;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.place.PlacedObject;
import gable.place.Placements;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Files of others: samples of the 3MF consortium and parts of an open research data set, of which
 * the corpus tells what an independent look found.
 */
class CorpusFindingTest {

  private static Path file(String ending) {
    if (ending.matches("[0-9]+-[xz].3mf")) {
      return Corpus.file("real/" + ending);
    }
    return Corpus.entries().stream()
        .map(Corpus.Entry::file)
        .filter(path -> path.getFileName().toString().endsWith(ending))
        .findFirst()
        .orElseThrow();
  }

  private static List<Bore> bores(String ending) throws Exception {
    try (OpcPackage source = OpcPackage.open(file(ending), OpcLimits.DEFAULT)) {
      ModelPackage model = ModelPackage.read(source, ModelLimits.USUAL);
      List<Bore> bores = new ArrayList<>();
      for (PlacedObject placed : Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed()) {
        Mesh mesh = placed.printMesh();
        FeatureFinder.find(mesh, HalfEdges.of(mesh), Tolerances.forModel(mesh.box().reach(), 0))
            .features()
            .forEach(feature -> bores.add((Bore) feature));
      }
      return bores;
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "core_box.3mf",
        "core_cylinder.3mf",
        "core_sphere.3mf",
        "core_torus.3mf",
        "Files_Helix.3mf",
        "holed_cube.3mf",
        "rhombicuboctahedron_color.3mf"
      })
  void findsNothingWhereThereIsNoRoundHole(String ending) throws Exception {
    assertThat(bores(ending)).isEmpty();
  }

  /** The index names the hole; in the file, in inches, it is 27.638 mm wide and upright. */
  @Test
  void findsTheUprightHoleOfAPartInInches() throws Exception {
    List<Bore> bores = bores("AdjMount.3mf");
    assertThat(bores).hasSize(1);
    assertThat(2 * bores.get(0).radius()).isCloseTo(27.638, within(1e-3));
    assertThat(Math.toDegrees(bores.get(0).tilt())).isCloseTo(90, within(0.02));
  }

  @Test
  void findsThirtyTwoLyingBoresInAPart() throws Exception {
    List<Bore> bores = bores("88566-z.3mf");
    assertThat(bores).hasSize(32).extracting(Bore::shape).containsOnly(BoreShape.ROUND);
    for (Bore bore : bores) {
      assertThat(2 * bore.radius()).isCloseTo(6, within(2e-3));
      assertThat(bore.length()).isCloseTo(2.5, within(2e-3));
      assertThat(bore.facetsPerTurn()).isEqualTo(40);
      assertThat(bore.tilt()).isLessThan(Math.toRadians(0.02));
    }
  }

  @Test
  void findsBoresOfManyFacetsInAPart() throws Exception {
    List<Bore> bores = bores("73416-x.3mf");
    assertThat(bores)
        .filteredOn(bore -> bore.shape() == BoreShape.ROUND)
        .extracting(bore -> Math.round(200 * bore.radius()) / 100.0)
        .contains(10.5, 5.0, 3.5, 3.0);
    assertThat(bores).noneMatch(bore -> Math.abs(2 * bore.radius() - 13) < 0.1);
  }

  /**
   * The wide hole of this part has five lobes: measured on the file, its wall is between 39.9 and
   * 40.28 mm from the axis, in arcs of 72 degrees with corners rounded by 2 mm between them.
   */
  @Test
  void findsTheRoundBoreBesideAHoleWithLobes() throws Exception {
    List<Bore> bores = bores("72214-x.3mf");
    assertThat(bores).hasSize(1);
    assertThat(2 * bores.get(0).radius()).isCloseTo(40, within(1e-3));
    assertThat(bores.get(0).shape()).isEqualTo(BoreShape.ROUND);
  }

  @Test
  void findsNoFullBoreInAPartThatHasNone() throws Exception {
    assertThat(bores("79741-z.3mf")).extracting(Bore::shape).doesNotContain(BoreShape.ROUND);
  }
}
