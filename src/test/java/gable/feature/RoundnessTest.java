package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Few corners that rounding moves alike on both rims are no form. */
class RoundnessTest {

  /** Of 1,440 such bores with 10 to 15 facets 44 were taken for ovals; these are three of them. */
  @ParameterizedTest(name = "radius {0}, turned by {1} degrees")
  @CsvSource({"2.68921, 77.3, 0", "3.38298, 30, 0.42", "5.33815, 30, 0"})
  void findsABoreOfTenFacetsWhoseCornersAreRoundedAlikeOnBothRims(
      double radius, double degrees, double phase) {
    double turn = Math.toRadians(degrees);
    Vec3 w = new Vec3(Math.cos(turn), Math.sin(turn), 0);
    Affine3 lying = Affine3.rows(Vec3.Z.cross(w), Vec3.Z, w, new Vec3(0.003, 80, 7.18));
    Ring ring = Ring.round(radius, 10, phase, -4.4);
    Mesh mesh =
        HoleBlock.ofHalfWidth(radius + 4)
            .ring(ring)
            .ring(ring.at(4.4))
            .through()
            .placed(lying)
            .rounded(2)
            .mesh();

    List<Feature> found =
        FeatureFinder.find(mesh, HalfEdges.of(mesh), Tolerances.forModel(mesh.box().reach(), 0))
            .features();

    assertThat(found).hasSize(1);
    Bore bore = (Bore) found.get(0);
    assertThat(bore.shape()).isEqualTo(BoreShape.ROUND);
    assertThat(bore.radius()).isCloseTo(radius, within(0.005)); // half a step of the coordinates
  }
}
