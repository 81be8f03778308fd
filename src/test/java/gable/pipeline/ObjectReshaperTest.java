package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.fixture.Edits;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.Kept;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.pipeline.ObjectReshaper.Change;
import gable.pipeline.ObjectReshaper.Frame;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Intent;
import gable.plan.Limits;
import gable.reshaper.GableRoof;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Roofs on blocks whose volumes are known in closed form. Expected numbers were derived by shoelace
 * and quadrature, apart from this code; the grid of the output is 1e-7 mm here so that rounding
 * stays below them.
 */
class ObjectReshaperTest {

  /** Lays the block's w along −y, its v upwards. */
  private static final Affine3 LYING = Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO);

  private static Vec3 onGrid(Vec3 p) {
    return new Vec3(round(p.x()), round(p.y()), round(p.z()));
  }

  private static double round(double value) {
    return Math.rint(value * 1e7) / 1e7;
  }

  @Test
  void takesTheClosedFormVolumeOutOfAThroughBore() {
    Mesh before = through(32, 4, 0, 15, 20).placed(LYING).mesh();
    Mesh after = reshaped(before, Limits.usual());
    assertThat(before.volume()).isCloseTo(17001.137551, within(2e-6));
    assertThat(after.volume()).isCloseTo(16930.853163, within(2e-5));
  }

  @Test
  void endsTheRoofOfABlindBoreAtItsFlatBottom() {
    MeshSketch sketch =
        HoleBlock.ofHalfWidth(15)
            .ring(Ring.round(4, 32, 0, 0))
            .ring(Ring.round(4, 32, 0, 12))
            .blind(20);
    Mesh before = sketch.placed(LYING).mesh();
    Mesh after = reshaped(before, Limits.usual());
    assertThat(before.volume() - after.volume()).isCloseTo(42.170633, within(2e-5));
  }

  @Test
  void followsASlantedMouth() {
    double slope = Math.tan(Math.toRadians(30));
    MeshSketch sketch =
        HoleBlock.ofHalfWidth(15)
            .slopes(slope, 0)
            .ring(Ring.slanted(4, 32, 0, 0, slope))
            .ring(Ring.round(4, 32, 0, 20))
            .through();
    Mesh before = sketch.placed(LYING).mesh();
    Mesh after = reshaped(before, Limits.usual());
    assertThat(before.volume() - after.volume()).isCloseTo(61.407744, within(2e-5));
  }

  @ParameterizedTest(name = "{0} facets, phase {1} degrees: area {2}")
  @CsvSource({
    "12, 0, 2.928203",
    "16, 0, 3.754131",
    "24, 0, 3.576688",
    "24, 3, 3.532861",
    "64, 0, 3.453808",
    "12, 15, 4.0",
    "16, 11.25, 3.145168",
    "32, 5.625, 3.360496"
  })
  void supportsTheBoresOwnPolygon(int facets, double phaseDeg, double area) {
    // n-gon areas per R², derived: 0.183013, 0.234633, 0.223543, (turned) , 0.215863; half-step
    // phase 0.25, 0.196573, 0.210031; times 16
    Mesh before = through(facets, 4, Math.toRadians(phaseDeg), 15, 20).placed(LYING).mesh();
    Mesh after = reshaped(before, Limits.usual());
    assertThat((before.volume() - after.volume()) / 20).isCloseTo(area, within(1e-5));
  }

  @ParameterizedTest(name = "tilt {0}")
  @ValueSource(doubles = {5, 15, 30, 40})
  void raisesTheRidgeByTheRadiusOverTheCosineWhateverTheTilt(double tiltDeg) {
    // derived: measured straight up, the ridge is r / cos s above the axis for every tilt
    Affine3 tilted =
        LYING.then(turnAboutX(Math.toRadians(tiltDeg))).then(shift(new Vec3(0, 0, 40)));
    Mesh before = through(64, 4, 0, 25, 20).placed(tilted).mesh();
    Result result = run(before, Limits.usual());
    MeshEdit edit = result.edit();
    Vec3 origin = result.features().get(0).feature().axis().origin();
    Vec3 w = result.features().get(0).feature().axis().direction();
    double highest = 0;
    for (int k = 0; k < edit.pointCount(); k++) {
      Vec3 p = new Vec3(edit.coordinate(k, 0), edit.coordinate(k, 1), edit.coordinate(k, 2));
      Vec3 d = p.minus(origin);
      double along = (d.x() * w.x() + d.y() * w.y()) / (w.x() * w.x() + w.y() * w.y());
      highest = Math.max(highest, d.z() - along * w.z());
    }
    // a polygon of 64 sides lies within r (1 − cos(π/64)) of its circle, and so do its supports
    assertThat(highest)
        .isBetween(4 * Math.sqrt(2) * Math.cos(Math.PI / 64) - 1e-6, 4 * Math.sqrt(2) + 1e-6);
  }

  @Test
  void leavesABoreThatIsSteepEnough() {
    Mesh before =
        through(32, 4, 0, 15, 20).placed(LYING.then(turnAboutX(Math.toRadians(46)))).mesh();
    assertThat(reasonFor(before, Limits.usual())).isEqualTo("steep-enough");
  }

  @Test
  void leavesASmallBoreAndKeepsOneOfExactlyTheBound() {
    assertThat(reasonFor(through(32, 1.9, 0, 15, 20).placed(LYING).mesh(), Limits.usual()))
        .isEqualTo("below-smallest");
    assertThat(profileFor(through(32, 2, 0, 15, 20).placed(LYING).mesh(), Limits.usual()))
        .isEqualTo("peaked");
  }

  @Test
  void topsTheRoofFlatWhereAFullPeakLeavesTooLittle() {
    // half width 6.3: above the crown 2.3 mm, above the full peak (5.657) 0.643 < 1.2
    Mesh before = through(64, 4, 0, 6.3, 20).placed(LYING).mesh();
    Result result = run(before, Limits.usual());
    Change change = result.features().get(0).changes().get(0);
    assertThat(change.profile()).contains("flat-topped");
    double bridge =
        change.measures().stream()
            .filter(measure -> measure.name().equals("bridge"))
            .findFirst()
            .orElseThrow()
            .value();
    // the flat must be at 5.1 = 4 √2 − b/2
    assertThat(bridge).isCloseTo(2 * (4 * Math.sqrt(2) - 5.1), within(3e-4));
    assertThat(Edits.applied(before, result.edit()).box()).isEqualTo(before.box());
  }

  @Test
  void leavesABoreWithTooLittleAboveItsCrown() {
    Mesh before = through(64, 4, 0, 5.1, 20).placed(LYING).mesh();
    assertThat(reasonFor(before, Limits.usual())).isEqualTo("thin-roof");
  }

  @Test
  void leavesABoreWhoseFlatTopWouldBeTooLong() {
    Mesh before = through(128, 12, 0, 15.3, 20).placed(LYING).mesh();
    assertThat(reasonFor(before, Limits.usual())).isEqualTo("long-bridge");
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26})
  void staysClosedAndTakesWhatTheSectionSaysForAnyBore(long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 12; round++) {
      int facets = 10 + random.nextInt(190);
      double radius = 2 + 6 * random.nextDouble();
      double phase = random.nextInt(4) == 0 ? Math.PI / facets : random.nextDouble();
      double turn = random.nextInt(3) == 0 ? 0 : 2 * Math.PI * random.nextDouble();
      MeshSketch sketch = through(facets, radius, phase, 25, 30);
      Mesh before = sketch.placed(LYING.then(turnAboutZ(turn))).mesh();
      double expected = 30 * areaAbove(facets, radius, phase);
      // rounding moves each new point by at most 1e-7 √3; the cut's surface is below 1500 mm²
      Kept.onFailure(
          "bore-" + seed + "-" + round,
          before,
          () ->
              assertThat(before.volume() - reshaped(before, Limits.usual()).volume())
                  .as("facets %d radius %f phase %f turn %f", facets, radius, phase, turn)
                  .isCloseTo(expected, within(3e-4)));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void changesNothingWhenRunOnItsOwnOutput(long seed) {
    Random random = new Random(seed);
    int facets = 12 + random.nextInt(120);
    Mesh before = through(facets, 4, random.nextDouble(), 15, 20).placed(LYING).mesh();
    Kept.onFailure("twice-" + seed, before, () -> changesNothingMore(before));
  }

  private static void changesNothingMore(Mesh before) {
    Result twice = run(reshaped(before, Limits.usual()), Limits.usual());
    assertThat(twice.edit().isEmpty()).isTrue();
    assertThat(twice.features().get(0).changes().get(0).reason().orElseThrow().code())
        .isEqualTo("already-peaked");
  }

  @Test
  void keepsVerticesAndFacetsThatStayUnderTheirNumbers() {
    Mesh before = through(64, 4, 0, 15, 20).placed(LYING).mesh();
    MeshEdit edit = run(before, Limits.usual()).edit();
    assertThat(edit.facetCount()).isGreaterThanOrEqualTo(edit.removedCount());
    for (int k = 0; k < edit.removedCount(); k++) {
      assertThat(edit.removed(k)).isBetween(0, before.facetCount() - 1);
    }
  }

  @Test
  void anObjectThatTakesTooMuchWorkKeepsItsOtherFeaturesWithThatReason() {
    MeshSketch near = through(32, 4, 0, 15, 20);
    MeshSketch far = through(32, 3, 0, 15, 20).placed(shift(new Vec3(50, 0, 0)));
    Mesh mesh = near.add(far).placed(LYING).mesh();
    HalfEdges halfEdges = HalfEdges.of(mesh);
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    List<Feature> features = FeatureFinder.find(mesh, halfEdges, tolerances).features();

    Result result =
        new ObjectReshaper(
                new WorkMesh(mesh, halfEdges, FacetTree.of(mesh)),
                new ObjectReshaper.Site(
                    mesh.box(),
                    new Frame(Affine3.IDENTITY, ObjectReshaperTest::onGrid, tolerances),
                    Map.of()),
                Limits.usual(),
                List.of(new GableRoof()),
                new Believing(),
                1)
            .reshape(features);

    // the larger bore comes first and may still be finished
    assertThat(result.features())
        .filteredOn(f -> f.feature().radius() > 3.5)
        .allSatisfy(f -> assertThat(f.changes().get(0).profile()).contains("peaked"));
    assertThat(result.features())
        .filteredOn(f -> f.feature().radius() < 3.5)
        .hasSize(1)
        .allSatisfy(
            f -> assertThat(f.changes().get(0).reason().orElseThrow().code()).isEqualTo("budget"));
  }

  private static MeshSketch through(
      int facets, double radius, double phase, double half, double length) {
    return HoleBlock.ofHalfWidth(half)
        .ring(Ring.round(radius, facets, Math.PI / 2 - phase, 0))
        .ring(Ring.round(radius, facets, Math.PI / 2 - phase, length))
        .through();
  }

  /** Area between the roof at 45 degrees and the polygon, by adding up thin upright strips. */
  private static double areaAbove(int facets, double radius, double phase) {
    double[] us = new double[facets];
    double[] vs = new double[facets];
    double right = Double.NEGATIVE_INFINITY;
    double left = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < facets; k++) {
      double a = Math.PI / 2 - phase + 2 * Math.PI * k / facets;
      us[k] = radius * Math.cos(a);
      vs[k] = radius * Math.sin(a);
      right = Math.max(right, us[k] + vs[k]);
      left = Math.max(left, vs[k] - us[k]);
    }
    // between polygon corners both outlines are straight, so that the strip's middle is exact,
    // but for the strip with the ridge: put a corner there
    double ridge = (right - left) / 2;
    double[] stops = Arrays.copyOf(us, facets + 1);
    stops[facets] = ridge;
    Arrays.sort(stops);
    double sum = 0;
    for (int k = 0; k < facets; k++) {
      double u = (stops[k] + stops[k + 1]) / 2;
      double roof = Math.min(right - u, left + u);
      double top = topAt(u, us, vs);
      double slope = Math.abs(roof - top) < 1e-12 ? 0 : roof - top;
      sum += supported(u, us, vs, right, left) ? slope * (stops[k + 1] - stops[k]) : 0;
    }
    return sum;
  }

  private static boolean supported(double u, double[] us, double[] vs, double right, double left) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < us.length; k++) {
      if (vs[k] - us[k] > left - 1e-9) {
        low = Math.min(low, us[k] == 0 ? 0 : us[k]);
      }
      if (us[k] + vs[k] > right - 1e-9) {
        high = Math.max(high, us[k]);
      }
    }
    return u > low && u < high;
  }

  private static double topAt(double u, double[] us, double[] vs) {
    double top = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < us.length; k++) {
      int next = (k + 1) % us.length;
      double low = Math.min(us[k], us[next]);
      double high = Math.max(us[k], us[next]);
      if (low <= u && u <= high && high > low) {
        top = Math.max(top, vs[k] + (vs[next] - vs[k]) * (u - us[k]) / (us[next] - us[k]));
      }
    }
    return top;
  }

  private static Affine3 turnAboutX(double angle) {
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    return Affine3.rows(Vec3.X, new Vec3(0, c, s), new Vec3(0, -s, c), Vec3.ZERO);
  }

  private static Affine3 turnAboutZ(double angle) {
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    return Affine3.rows(new Vec3(c, s, 0), new Vec3(-s, c, 0), Vec3.Z, Vec3.ZERO);
  }

  private static Affine3 shift(Vec3 by) {
    return Affine3.rows(Vec3.X, Vec3.Y, Vec3.Z, by);
  }

  private static String reasonFor(Mesh mesh, Limits limits) {
    return run(mesh, limits).features().get(0).changes().get(0).reason().orElseThrow().code();
  }

  private static String profileFor(Mesh mesh, Limits limits) {
    return run(mesh, limits).features().get(0).changes().get(0).profile().orElseThrow();
  }

  private static Mesh reshaped(Mesh mesh, Limits limits) {
    Mesh after = Edits.applied(mesh, run(mesh, limits).edit());
    assertThat(HalfEdges.of(after).closed()).isTrue();
    return after;
  }

  private static Result run(Mesh mesh, Limits limits) {
    HalfEdges halfEdges = HalfEdges.of(mesh);
    assertThat(halfEdges.closed()).isTrue();
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    List<Feature> features = FeatureFinder.find(mesh, halfEdges, tolerances).features();
    assertThat(features).hasSize(1);
    return new ObjectReshaper(
            new WorkMesh(mesh, halfEdges, FacetTree.of(mesh)),
            mesh.box(),
            new Frame(Affine3.IDENTITY, ObjectReshaperTest::onGrid, tolerances),
            limits,
            List.of(new GableRoof()),
            new Believing())
        .reshape(features);
  }

  /** Takes every edit for sound, so that what is looked at is the edit itself. */
  private static final class Believing implements ObjectReshaper.Proof {
    @Override
    public Optional<String> fault(WorkMesh before, MeshEdit edit, Intent intent) {
      return Optional.empty();
    }

    @Override
    public Optional<String> tidyFault(WorkMesh before, MeshEdit edit) {
      return Optional.empty();
    }
  }
}
