package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.feature.ClearanceHole.Fit;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.geom.Tolerances;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Seats of screws. Rows of ISO 273:1979, ISO 15065:2005 and DIN 74 form A as second-hand copies
 * that agree have them (the originals were not at hand).
 */
class ScrewSeatTest {

  @ParameterizedTest
  @CsvSource({
    "2, 2.2, 2.4, 2.6",
    "2.5, 2.7, 2.9, 3.1",
    "3, 3.2, 3.4, 3.6",
    "4, 4.3, 4.5, 4.8",
    "5, 5.3, 5.5, 5.8",
    "6, 6.4, 6.6, 7",
    "8, 8.4, 9, 10",
    "10, 10.5, 11, 12",
    "12, 13, 13.5, 14.5",
    "16, 17, 17.5, 18.5",
    "20, 21, 22, 24"
  })
  void clearanceHolesAreThoseOfTheStandard(
      double thread, double fine, double medium, double coarse) {
    assertThat(ClearanceHole.of(fine)).contains(new ClearanceHole(thread, fine, Fit.FINE));
    assertThat(ClearanceHole.of(medium)).contains(new ClearanceHole(thread, medium, Fit.MEDIUM));
    assertThat(ClearanceHole.of(coarse)).contains(new ClearanceHole(thread, coarse, Fit.COARSE));
  }

  @Test
  void otherDiametersAreNoClearanceHoles() {
    assertThat(ClearanceHole.of(3.0)).isEmpty();
    assertThat(ClearanceHole.of(3.3)).isEmpty();
    assertThat(ClearanceHole.of(8.0)).isEmpty();
    assertThat(ClearanceHole.all()).hasSize(33);
  }

  @ParameterizedTest
  @CsvSource({
    "2, 4.4",
    "2.5, 5.5",
    "3, 6.3",
    "4, 9.4",
    "5, 10.4",
    "6, 12.6",
    "8, 17.3",
    "10, 20.0",
    "3, 6.5",
    "4, 8.6",
    "6, 12.4",
    "8, 16.4"
  })
  void seatsAreThoseOfTheStandards(double thread, double outer) {
    assertThat(ScrewSeat.isOuter(thread, outer)).isTrue();
    assertThat(ScrewSeat.isOuter(thread, outer + 0.35)).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "3.4, 6.3, M3",
    "4.5, 9.4, M4",
    "5.5, 10.4, M5",
    "6.6, 12.6, M6",
    "9, 17.3, M8",
    "3.2, 6.5, M3",
    "4.3, 8.6, M4",
    "2.9, 5.5, M2.5"
  })
  void aCountersinkOverItsClearanceHoleIsASeat(double hole, double outer, String screw) {
    assertThat(seat(hole, outer, (outer - hole) / 2).map(ScrewSeat::screw)).contains(screw);
  }

  @Test
  void otherConesAreNoSeats() {
    assertThat(seat(3.4, 4.2, 0.4)).as("a chamfer").isEmpty();
    assertThat(seat(3.4, 8, 2.3)).as("too wide").isEmpty();
    assertThat(seat(3.0, 6.3, 1.65)).as("no clearance hole").isEmpty();
    assertThat(seat(3.4, 6.3, 0.87)).as("118 degrees").isEmpty();
  }

  @Test
  void theConeOfASeatHasTheVolumeOfItsClosedForm() {
    // cone outside the hole: pi a c (r + c / 3), for M3 with a = c = 1.45: 14.421350 mm3; of a
    // 96-gon the share (n / 2) sin(2 pi / n) / pi
    double share = 96 / 2.0 * Math.sin(2 * Math.PI / 96) / Math.PI;
    double plain = block(3.4, 3.4, 1.45).volume();

    assertThat(plain - block(3.4, 6.3, 1.45).volume()).isCloseTo(14.421350 * share, within(1e-4));
  }

  private static Optional<ScrewSeat> seat(double hole, double outer, double depth) {
    Mesh mesh = block(hole, outer, depth);
    Findings found =
        FeatureFinder.find(mesh, HalfEdges.of(mesh), Tolerances.forModel(mesh.box().reach(), 0));
    Bore bore =
        found.features().stream()
            .filter(Bore.class::isInstance)
            .map(Bore.class::cast)
            .findFirst()
            .orElseThrow();
    return ScrewSeat.of(bore);
  }

  private static Mesh block(double hole, double outer, double depth) {
    return HoleBlock.ofHalfWidth(12)
        .ring(Ring.round(outer / 2, 96, 0, 0))
        .ring(Ring.round(hole / 2, 96, 0, depth))
        .ring(Ring.round(hole / 2, 96, 0, depth + 8))
        .through()
        .mesh();
  }
}
