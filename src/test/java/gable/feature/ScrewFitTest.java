package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.Helix;
import gable.fixture.Helix.Profile;
import gable.fixture.Lathe;
import gable.fixture.MeshSketch;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Motions of surfaces of which they are known: by the helix that made them, or by symmetry. */
class ScrewFitTest {

  private static Optional<ScrewMotion> motion(MeshSketch sketch, int from, int to) {
    Mesh mesh = sketch.mesh();
    var fit = new ScrewFit(new Surface(mesh, HalfEdges.of(mesh), 1e-9, 0), new Vec3(1, 2, 3));
    for (int facet = from; facet < to; facet++) {
      fit.add(facet);
    }
    return fit.motion();
  }

  /** Four whole turns; facets follow the helix the better, the more steps there are. */
  @ParameterizedTest
  @ValueSource(ints = {12, 48, 192})
  void aHelixGivesItsAxisAndRise(int steps) {
    MeshSketch rod = Helix.of(5, 1.5, Profile.SHARP, steps, 4).rod(0);
    ScrewMotion motion = motion(rod, 0, 4 * 4 * steps).orElseThrow();

    double share =
        2.0 / (steps * steps); // of the square of a step, 4 π² / steps², about a twentieth
    assertThat(Math.abs(motion.direction().z())).isCloseTo(1, within(share));
    assertThat(motion.rise()).isCloseTo(1.5 / (2 * Math.PI), within(5 * share));
    assertThat(Math.hypot(motion.origin().x(), motion.origin().y())).isLessThan(25 * share);
  }

  @Test
  void aConeTurnsWithoutRising() {
    MeshSketch cone = Lathe.ofSides(48, 0).ring(0, 5).ring(6, 3).sketch();
    ScrewMotion motion = motion(cone, 0, 96).orElseThrow();

    assertThat(Math.abs(motion.direction().z())).isCloseTo(1, within(1e-6));
    assertThat(motion.rise()).isCloseTo(0, within(1e-6));
  }

  @Test
  void aCylinderDoesNotTell() {
    assertThat(motion(Lathe.ofSides(48, 0).ring(0, 5).ring(6, 5).sketch(), 0, 96)).isEmpty();
  }
}
