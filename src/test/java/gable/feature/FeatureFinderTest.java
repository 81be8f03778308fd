package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected values are derived: the blocks are made from them. */
class FeatureFinderTest {

  private static Findings find(Mesh mesh) {
    return FeatureFinder.find(mesh, HalfEdges.of(mesh), Tolerances.forModel(mesh.box().reach(), 0));
  }

  private static Bore only(Mesh mesh) {
    Findings findings = find(mesh);
    assertThat(findings.features()).hasSize(1);
    return (Bore) findings.features().get(0);
  }

  private static HoleBlock prism(int sides) {
    return HoleBlock.ofHalfWidth(10)
        .ring(Ring.round(4, sides, 0.1, 0))
        .ring(Ring.round(4, sides, 0.1, 20));
  }

  @ParameterizedTest
  @ValueSource(ints = {10, 11, 12, 17, 32, 64, 128, 256})
  void findsAThroughBoreOfAnyNumberOfFacets(int sides) {
    Bore bore = only(prism(sides).through().mesh());
    assertThat(bore.shape()).isEqualTo(BoreShape.ROUND);
    assertThat(bore.radius()).isCloseTo(4, within(1e-9));
    assertThat(bore.facetsPerTurn()).isEqualTo(sides);
    assertThat(bore.section().clean()).isTrue();
    assertThat(bore.section().rulings()).hasSize(sides);
    assertThat(bore.axis().origin().distance(new Vec3(0, 0, 10))).isLessThan(1e-9);
    assertThat(bore.axis().direction().distance(Vec3.Z)).isLessThan(1e-9);
    assertThat(bore.low().kind()).isEqualTo(EndKind.OPEN_SQUARE);
    assertThat(bore.high().kind()).isEqualTo(EndKind.OPEN_SQUARE);
    assertThat(bore.low().wMax()).isCloseTo(-10, within(1e-9));
    assertThat(bore.high().wMin()).isCloseTo(10, within(1e-9));
    assertThat(bore.wall()).hasSize(2 * sides);
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 9})
  void callsAPocketOfFewerThanTenSidesAPolygon(int sides) {
    assertThat(only(prism(sides).through().mesh()).shape()).isEqualTo(BoreShape.POLYGON);
  }

  @Test
  void tellsABlindFlatEndFromAnOpenOne() {
    Bore bore = only(prism(32).blind(30).mesh());
    assertThat(bore.low().kind()).isEqualTo(EndKind.OPEN_SQUARE);
    assertThat(bore.high().kind()).isEqualTo(EndKind.BLIND_FLAT);
  }

  @Test
  void measuresSlantedMouths() {
    HoleBlock block =
        HoleBlock.ofHalfWidth(10)
            .ring(Ring.slanted(4, 32, 0.1, 0, 0.5))
            .ring(Ring.slanted(4, 32, 0.1, 40, -1))
            .slopes(0.5, -1);
    Bore bore = only(block.through().mesh());
    assertThat(bore.low().kind()).isEqualTo(EndKind.OPEN_SLANTED);
    assertThat(bore.high().kind()).isEqualTo(EndKind.OPEN_SLANTED);
    Vec3 expected = new Vec3(0, 1, 1).unit();
    Vec3 normal = bore.high().plane().orElseThrow().normal();
    assertThat(normal.distance(expected)).isLessThan(1e-9);
    assertThat(bore.section().clean()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void findsATiltedBoreFarFromTheOrigin(long seed) {
    Random random = new Random(seed);
    Affine3 turn =
        Affine3.layingUp(
            new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()));
    Affine3 map = turn.then(new Affine3(1, 0, 0, 0, 1, 0, 0, 0, 1, 1e4, -1e4, 1e4));
    MeshSketch sketch = prism(10 + random.nextInt(200)).through().placed(map);
    Bore bore = only(sketch.shuffled(random).mesh());
    assertThat(bore.radius()).isCloseTo(4, within(2e-3 / 2));
    Vec3 axis = turn.applyVector(Vec3.Z);
    // the demand is 0.02 degrees and 2 micrometres
    assertThat(bore.axis().direction().cross(axis).norm()).isLessThan(Math.toRadians(0.02));
    assertThat(bore.axis().distance(map.apply(new Vec3(0, 0, 10)))).isLessThan(2e-3);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void findsABoreWhosePointsJitterByFiveMicrometres(long seed) {
    Random random = new Random(seed);
    Bore bore = only(prism(10 + random.nextInt(200)).through().jittered(5e-3, random).mesh());
    assertThat(bore.shape()).isEqualTo(BoreShape.ROUND);
    // the mean of 20 or more corners that jitter by 5 micrometres at most
    assertThat(bore.radius()).isCloseTo(4, within(5e-3));
  }

  /**
   * The first band of a rounding turns from the wall by half its step: less than a seventh of what
   * ten or twelve facets turn by.
   */
  @ParameterizedTest
  @CsvSource({"10, 8", "10, 9", "10, 16", "12, 10", "12, 12", "16, 15", "24, 24"})
  void findsACoarseWallThatRunsIntoARounding(int sides, int steps) {
    HoleBlock block = prism(sides);
    for (int k = 1; k <= steps; k++) {
      double angle = Math.PI / 2 * k / steps;
      block.ring(Ring.round(6 - 2 * Math.cos(angle), sides, 0.1, 20 + 2 * Math.sin(angle)));
    }
    Bore bore = only(block.through().mesh());
    assertThat(bore.radius()).isCloseTo(4, within(1e-3));
    assertThat(bore.facetsPerTurn()).isEqualTo(sides);
    assertThat(bore.low().wMax()).isCloseTo(bore.high().wMin() - 20, within(1e-3));
  }

  /** As booleans leave walls: needles between facets, turned anywhere once their corners stray. */
  @ParameterizedTest
  @CsvSource({"10, 2e-3", "10, 5e-3", "24, 2e-3", "72, 5e-3"})
  void findsAWallWithNeedlesWhoseCornersJitter(int sides, double jitter) {
    Bore bore = only(twinned(sides).through().jittered(jitter, new Random(1)).mesh());
    assertThat(bore.shape()).isEqualTo(BoreShape.ROUND);
    assertThat(bore.radius()).isCloseTo(4, within(jitter));
    assertThat(bore.wall()).hasSize(4 * sides);
  }

  /** A prism each of whose corners is there twice. */
  private static HoleBlock twinned(int sides) {
    Ring once = Ring.round(4, sides, 0.1, 0);
    Ring twice = new Ring(once.points().stream().flatMap(p -> Stream.of(p, p)).toList());
    return HoleBlock.ofHalfWidth(10).ring(twice).ring(twice.at(20));
  }

  @Test
  void leavesAConeAlone() {
    HoleBlock cone =
        HoleBlock.ofHalfWidth(10).ring(Ring.round(4, 64, 0, 0)).ring(Ring.round(4.2, 64, 0, 20));
    assertThat(find(cone.through().mesh()).features()).isEmpty();
  }
}
