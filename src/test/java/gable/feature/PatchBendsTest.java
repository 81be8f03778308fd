package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected bends follow from how the walls are made (derived). */
class PatchBendsTest {

  private static final int SIDES = 48;
  private static final int ROWS = 10;

  /** A wall whose radius depends on w from 0 to 5, its facets half a millimetre large. */
  private static MeshSketch wall(DoubleUnaryOperator radius) {
    HoleBlock block = HoleBlock.ofHalfWidth(20);
    for (int k = 0; k <= ROWS; k++) {
      double w = 0.5 * k;
      block.ring(Ring.round(radius.applyAsDouble(w), SIDES, Math.PI / SIDES * k, w));
    }
    return block.through();
  }

  private static PatchBends bends(Mesh mesh) {
    var surface = new Surface(mesh, HalfEdges.of(mesh), 1e-9, 0);
    var bends = new PatchBends(surface);
    int facets = 2 * SIDES * ROWS; // the wall's facets come first
    for (int h = 0; h < 3 * facets; h++) {
      int other = surface.beyond(h);
      if (other < facets && other > h / 3) {
        bends.add(h, other);
      }
    }
    return bends;
  }

  @Test
  void aRoundWallBendsOneWay() {
    PatchBends bends = bends(wall(w -> 4).mesh());
    assertThat(bends.isTwofold(2 * SIDES * ROWS)).isFalse();
  }

  @Test
  void aPrismIsHollowThroughout() {
    MeshSketch prism =
        HoleBlock.ofHalfWidth(20)
            .ring(Ring.round(4, SIDES, 0, 0))
            .ring(Ring.round(4, SIDES, 0, 5))
            .through();
    var surface = new Surface(prism.mesh(), HalfEdges.of(prism.mesh()), 1e-9, 0);
    var bends = new PatchBends(surface);
    for (int h = 0; h < 6 * SIDES; h++) {
      int other = surface.beyond(h);
      if (other < 2 * SIDES && other > h / 3) {
        bends.add(h, other);
      }
    }
    assertThat(bends.hollowness()).isCloseTo(1, within(1e-6));
  }

  /** The inside of a ball of radius 5 between 2.5 millimetres below and above its middle. */
  @Test
  void aBallBendsTwoWays() {
    PatchBends bends = bends(wall(w -> Math.sqrt(25 - (w - 2.5) * (w - 2.5))).mesh());
    assertThat(bends.isTwofold(2 * SIDES * ROWS)).isTrue();
  }

  /** A waist: hollow about the axis, and convex along it with a radius of 8. */
  @Test
  void aWaistBendsTwoWays() {
    PatchBends bends = bends(wall(w -> 4 + (w - 2.5) * (w - 2.5) / 16).mesh());
    assertThat(bends.isTwofold(2 * SIDES * ROWS)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void noiseIsNoSecondBend(long seed) {
    PatchBends bends = bends(wall(w -> 4).jittered(10e-3, new Random(seed)).mesh());
    assertThat(bends.isTwofold(2 * SIDES * ROWS)).isFalse();
  }
}
