package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.Lathe;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is called a pin, and what is not. Sizes are those of the bodies as they are made. */
class PinFinderTest {

  private static final double R = 3;

  /** Lays what stands along z along y. */
  private static final Affine3 LYING = Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO);

  @ParameterizedTest(name = "{0} facets")
  @ValueSource(ints = {10, 12, 17, 32, 64, 128})
  void aRoundRodOnADiscIsAPinWithItsSizes(int sides) {
    Pin pin = onlyPin(disc(sides).ring(0, R).ring(12, R).sketch());

    assertThat(pin.id()).isEqualTo("P1");
    assertThat(2 * pin.radius()).isCloseTo(2 * R, within(1e-6));
    assertThat(pin.length()).isCloseTo(12, within(1e-6));
    assertThat(pin.facetsPerTurn()).isEqualTo(sides);
    assertThat(pin.root()).isEqualTo(RootKind.SQUARE);
    assertThat(pin.tip()).isEqualTo(TipKind.FLAT);
    assertThat(pin.axis().direction().z()).isCloseTo(1, within(1e-9));
    assertThat(pin.axis().origin().z()).isCloseTo(6, within(1e-6));
    assertThat(pin.isUpright()).isTrue();
  }

  @Test
  void aPinThatLiesIsHorizontalAndPointsFromRootToTip() {
    Pin pin = onlyPin(disc(32).ring(0, R).ring(12, R).sketch().placed(LYING));

    assertThat(pin.isUpright()).isFalse();
    assertThat(pin.tilt()).isCloseTo(0, within(1e-9));
    assertThat(Math.abs(pin.axis().direction().y())).isCloseTo(1, within(1e-9));
    assertThat(pin.axis().at(pin.length() / 2).y()).isCloseTo(-12, within(1e-6));
  }

  @Test
  void tipsAreCalledByTheirForm() {
    assertThat(tipOf(disc(48).ring(0, R).ring(10, R).ring(11, R - 1))).isEqualTo(TipKind.CHAMFERED);
    assertThat(tipOf(disc(48).ring(0, R).ring(10, R).ring(13, 0))).isEqualTo(TipKind.CONICAL);
    assertThat(
            tipOf(
                disc(48)
                    .ring(0, R)
                    .ring(10, R)
                    .ring(11.5, R * Math.cos(Math.PI / 6))
                    .ring(10 + R * Math.sin(Math.PI / 3), R / 2)
                    .ring(13, 0)))
        .isEqualTo(TipKind.ROUNDED);
    assertThat(tipOf(disc(48).ring(0, R).ring(10, R).ring(10, 1).ring(8, 1)))
        .isEqualTo(TipKind.HOLLOW);
    assertThat(tipOf(disc(48).ring(0, R).ring(10, R).endingSlanted(0.4))).isEqualTo(TipKind.FLAT);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void tipsAreCalledByTheirFormWhereCornersStray(long seed) {
    Random random = new Random(seed);
    for (double jitter : new double[] {2e-3, 5e-3}) {
      for (int sides : new int[] {16, 48, 96}) {
        Lathe wall = disc(sides).ring(0, R).ring(10, R);
        MeshSketch chamfered = wall.ring(11, R - 1).sketch().jittered(jitter, random);
        assertThat(onlyPin(chamfered).tip()).isEqualTo(TipKind.CHAMFERED);
        MeshSketch flat = disc(sides).ring(0, R).ring(10, R).sketch().jittered(jitter, random);
        assertThat(onlyPin(flat).tip()).isEqualTo(TipKind.FLAT);
        Lathe rounded = disc(sides).ring(0, R).ring(10, R).ring(11.5, R * Math.cos(Math.PI / 6));
        rounded.ring(10 + R * Math.sin(Math.PI / 3), R / 2).ring(13, 0);
        assertThat(onlyPin(rounded.sketch().jittered(jitter, random)).tip())
            .isEqualTo(TipKind.ROUNDED);
      }
    }
  }

  /** The root of a pin, rounded by a millimetre. */
  private static Lathe filleted(int sides, int steps) {
    Lathe filleted = disc(sides);
    for (int k = 0; k <= steps; k++) {
      double angle = Math.PI / 2 * k / steps;
      filleted.ring(1 - Math.cos(angle), R + 1 - Math.sin(angle));
    }
    return filleted;
  }

  @Test
  void aPinOfTenFacetsWithARoundedRootIsFound() {
    Pin pin = onlyPin(filleted(10, 9).ring(12, R).sketch());

    assertThat(pin.facetsPerTurn()).isEqualTo(10);
    assertThat(pin.length()).isCloseTo(11, within(1e-6));
  }

  @Test
  void rootsAreCalledByTheirForm() {
    Pin pin = onlyPin(filleted(48, 6).ring(12, R).sketch());

    assertThat(pin.root()).isEqualTo(RootKind.FILLETED);
    assertThat(pin.length()).isCloseTo(11, within(1e-6));
    assertThat(onlyPin(disc(48).ring(0, R + 1).ring(1, R).ring(12, R).sketch()).root())
        .isEqualTo(RootKind.CHAMFERED);
  }

  @Test
  void theOutsideOfABossOrPipeIsNoPin() {
    assertThat(pins(disc(32).ring(0, R).ring(10, R).ring(10, 2).ring(4, 2).sketch())).isEmpty();
  }

  @Test
  void aWheelAndABodyOfItsOwnAreNoPins() {
    assertThat(pins(disc(32).ring(0, R).ring(1.9, R).sketch())).isEmpty();
    assertThat(pins(Lathe.ofSides(32, 0).ring(0, R).ring(12, R).sketch())).isEmpty();
  }

  @Test
  void aShaftBetweenTwoWallsIsNoPin() {
    assertThat(pins(disc(32).ring(0, R).ring(12, R).ring(12, 8).ring(15, 8).sketch())).isEmpty();
  }

  @Test
  void orderAndNumbersOfFacetsDoNotMatter() {
    MeshSketch sketch = disc(24).ring(0, R).ring(8, R).sketch();
    Pin pin = onlyPin(sketch);
    Pin other = onlyPin(sketch.shuffled(new Random(5)));

    assertThat(other.length()).isCloseTo(pin.length(), within(1e-9));
    assertThat(other.wall()).hasSameSizeAs(pin.wall());
  }

  @Test
  void noiseOfAFewMicrometresHidesNoPin() {
    MeshSketch sketch = disc(32).ring(0, R).ring(9, R).sketch();

    Pin pin = onlyPin(sketch.jittered(0.005, new Random(3)));

    assertThat(pin.radius()).isCloseTo(R, within(0.01));
  }

  private static Lathe disc(int sides) {
    return Lathe.ofSides(sides, 0.1).ring(-3, 8).ring(0, 8);
  }

  private static TipKind tipOf(Lathe lathe) {
    return onlyPin(lathe.sketch()).tip();
  }

  private static Pin onlyPin(MeshSketch sketch) {
    List<Pin> pins = pins(sketch);
    assertThat(pins).hasSize(1);
    return pins.get(0);
  }

  private static List<Pin> pins(MeshSketch sketch) {
    Mesh mesh = sketch.mesh();
    HalfEdges halfEdges = HalfEdges.of(mesh);
    assertThat(halfEdges.closed()).isTrue();
    assertThat(mesh.volume()).isPositive();
    return FeatureFinder.find(mesh, halfEdges, Tolerances.forModel(mesh.box().reach(), 0))
        .features()
        .stream()
        .filter(Pin.class::isInstance)
        .map(Pin.class::cast)
        .toList();
  }
}
