package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.Helix;
import gable.fixture.Helix.Profile;
import gable.fixture.Lathe;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is called a thread, and what is not. Holes are rods turned inside out; profiles are those of
 * the standards named at {@link Helix}, from memory.
 */
class ThreadTest {

  private static final Affine3 MIRROR = Affine3.rows(Vec3.X.times(-1), Vec3.Y, Vec3.Z, Vec3.ZERO);

  /** A turn about no axis in particular. */
  private static final Affine3 ASKEW = turn(0.3, 1.1);

  private static Affine3 turn(double about, double tilt) {
    Vec3 w =
        new Vec3(
            Math.cos(about) * Math.cos(tilt), Math.sin(about) * Math.cos(tilt), Math.sin(tilt));
    Vec3 u = new Vec3(-Math.sin(about), Math.cos(about), 0);
    return Affine3.rows(u, w.cross(u), w, new Vec3(7, -3, 20));
  }

  private static List<Feature> find(MeshSketch sketch) {
    Mesh mesh = sketch.mesh();
    return FeatureFinder.find(mesh, HalfEdges.of(mesh), Tolerances.forModel(mesh.box().reach(), 0))
        .features();
  }

  private static Bore onlyThread(MeshSketch hole) {
    List<Feature> features = find(hole);
    assertThat(features).hasSize(1);
    Bore bore = (Bore) features.get(0);
    assertThat(bore.shape()).isEqualTo(BoreShape.THREAD);
    return bore;
  }

  static Stream<Arguments> formsAndSteps() {
    return Stream.of(Profile.METRIC, Profile.TRAPEZOID, Profile.SHARP, Profile.SQUARE)
        .flatMap(
            profile -> Stream.of(8, 12, 24, 48, 64).map(steps -> Arguments.of(profile, steps)));
  }

  @ParameterizedTest(name = "{0}, {1} steps")
  @MethodSource("formsAndSteps")
  void anInsideThreadOfAnyFormIsSaidToBeOne(Profile profile, int steps) {
    Bore thread = onlyThread(Helix.of(5, 1.5, profile, steps, 6).rod(0).flipped().placed(ASKEW));

    Vec3 axis = ASKEW.applyVector(Vec3.Z);
    assertThat(thread.axis().direction().cross(axis).norm()).isLessThan(0.01);
    assertThat(thread.radius()).isCloseTo(5, within(0.1));
    // six turns, and the one in which the columns of the last row come to their end
    assertThat(thread.length()).isBetween(6 * 1.5, 8 * 1.5 + 1e-3);
  }

  @Test
  void aLeftHandedThreadIsOne() {
    onlyThread(Helix.of(5, 1.5, Profile.METRIC, 24, 6).rod(0).flipped().placed(MIRROR));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4})
  void aThreadOfSeveralStartsIsOne(int starts) {
    onlyThread(Helix.of(5, 1.2, Profile.TRAPEZOID, 36, 2).withStarts(starts).rod(0).flipped());
  }

  /** ISO 7-1: 1 in 16 on the diameter. */
  @Test
  void aPipeThreadIsOne() {
    onlyThread(Helix.of(6, 1.337, Profile.METRIC, 32, 7).rod(1 / 32.0).flipped());
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 16, 48})
  void aThreadedRodIsNeitherABoreNorAPin(int steps) {
    assertThat(find(Helix.of(5, 1.5, Profile.METRIC, steps, 6).rod(0))).isEmpty();
  }

  @Test
  void aTurnAndAnotherOrderChangeNothing() {
    MeshSketch plain = Helix.of(5, 1.5, Profile.METRIC, 20, 6).rod(0).flipped().placed(turn(0, 0));
    MeshSketch other =
        Helix.of(5, 1.5, Profile.METRIC, 20, 6).rod(0).flipped().placed(turn(0.7, 0));
    Bore one = onlyThread(plain);
    Bore two = onlyThread(other.shuffled(new Random(3)));

    assertThat(two.radius()).isCloseTo(one.radius(), within(1e-9));
    assertThat(two.length()).isCloseTo(one.length(), within(1e-9));
    assertThat(two.tilt()).isCloseTo(one.tilt(), within(1e-9));
  }

  /** One turn of a strip that is a pitch wide reaches over two pitches. */
  @Test
  void oneTurnIsNoThread() {
    assertThat(find(Helix.of(5, 4, Profile.SHARP, 48, 0).rod(0).flipped()))
        .noneMatch(feature -> ((Bore) feature).shape() == BoreShape.THREAD);
  }

  /** Rifling and helical gears climb more steeply than any thread. */
  @Test
  void aSteepHelixIsNoThread() {
    assertThat(find(Helix.of(5, 9, Profile.SHARP, 48, 2).withStarts(8).rod(0).flipped()))
        .noneMatch(feature -> ((Bore) feature).shape() == BoreShape.THREAD);
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 24, 64})
  void ringsWithoutAPitchAreNoThread(int sides) {
    Lathe rings = Lathe.ofSides(sides, 0.1);
    for (int k = 0; k < 12; k++) {
      rings.ring(1.5 * k, 5).ring(1.5 * k + 0.75, 5.8);
    }
    assertThat(find(rings.ring(18, 5).sketch().flipped()))
        .noneMatch(feature -> ((Bore) feature).shape() == BoreShape.THREAD);
  }

  /** An oil groove of three turns; the wall beside it covers most of its cylinder. */
  @Test
  void aGrooveThatWindsThroughABoreIsNoThread() {
    List<Feature> found = find(new Helix(5, 6, 1, Profile.GROOVE, 48, 1, 4).rod(0).flipped());
    assertThat(found)
        .isNotEmpty()
        .allMatch(feature -> ((Bore) feature).shape() == BoreShape.PARTIAL);
  }
}
