package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.Kept;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws of finding, on blocks made at random; truth is what they are made from (derived). */
class FindingPropertyTest {

  private static LongStream seeds() {
    return LongStream.range(0, 40);
  }

  /** One block with one round hole, and what is known of it. */
  private record Sample(MeshSketch sketch, double radius, Axis2 axis) {}

  private record Axis2(Vec3 start, Vec3 end) {}

  private static Sample sample(Random random, double scale, double far) {
    double radius = 2 + 8 * random.nextDouble();
    int sides = 10 + (int) (246 * Math.pow(random.nextDouble(), 2));
    double length = (0.3 + 3 * random.nextDouble()) * radius;
    int rings = 1 + random.nextInt(6);
    double[] angles = angles(random, sides, random.nextBoolean());
    HoleBlock block = HoleBlock.ofHalfWidth(2.2 * radius);
    for (int k = 0; k <= rings; k++) {
      List<Vec3> points = new ArrayList<>();
      for (double angle : angles) {
        points.add(
            new Vec3(radius * Math.cos(angle), radius * Math.sin(angle), length * k / rings));
      }
      block.ring(new Ring(points));
    }
    if (random.nextBoolean()) {
      block.crossed();
    }
    Vec3 up = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    Affine3 map =
        Affine3.scale(scale)
            .then(Affine3.layingUp(up))
            .then(new Affine3(1, 0, 0, 0, 1, 0, 0, 0, 1, far, -far, far));
    var axis = new Axis2(map.apply(Vec3.ZERO), map.apply(new Vec3(0, 0, length)));
    return new Sample(block.through().placed(map), radius * scale, axis);
  }

  /** Angles of a polygon's corners; uneven ones differ by up to a factor of three. */
  private static double[] angles(Random random, int sides, boolean even) {
    double[] angles = new double[sides];
    double sum = 0;
    for (int k = 0; k < sides; k++) {
      angles[k] = sum;
      sum += even ? 1 : 0.5 + random.nextDouble();
    }
    double phase = 7 * random.nextDouble();
    for (int k = 0; k < sides; k++) {
      angles[k] = phase + 2 * Math.PI * angles[k] / sum;
    }
    return angles;
  }

  private static List<Bore> find(Mesh mesh, double step) {
    return FeatureFinder.find(
            mesh, HalfEdges.of(mesh), Tolerances.forModel(mesh.box().reach(), step))
        .features()
        .stream()
        .map(Bore.class::cast)
        .toList();
  }

  private static void checkFound(String name, Sample sample, Mesh mesh, double step, double slack) {
    Kept.onFailure(name, mesh, () -> expectFound(sample, mesh, step, slack));
  }

  private static void expectFound(Sample sample, Mesh mesh, double step, double slack) {
    List<Bore> bores = find(mesh, step);
    assertThat(bores).extracting(Bore::shape).containsExactly(BoreShape.ROUND);
    Bore bore = bores.get(0);
    double diameter = 2 * sample.radius;
    double allowed = Math.max(1e-3 * diameter, 2e-3) + slack; // 0.1 % or 2 micrometres
    assertThat(2 * bore.radius()).isCloseTo(diameter, within(allowed));
    assertThat(bore.axis().distance(sample.axis.start)).isLessThan(2e-3 + slack);
    assertThat(bore.axis().distance(sample.axis.end)).isLessThan(2e-3 + slack);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void findsACleanBoreOfAnyTilt(long seed) {
    Sample sample = sample(new Random(seed), 1, 0);
    checkFound("bore-clean-" + seed, sample, sample.sketch.mesh(), 0, 0);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void findsTinyAndHugeBoresFarFromTheOrigin(long seed) {
    Random random = new Random(seed);
    double scale = Math.exp(6 * random.nextDouble() - 3); // radius 0.1 to 200 mm
    Sample sample = sample(random, scale, scale < 0.3 ? 0 : 1e4);
    checkFound("bore-scaled-" + seed, sample, sample.sketch.mesh(), 0, 0);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void findsABoreWithFewDecimals(long seed) {
    Random random = new Random(seed);
    Sample sample = sample(random, 1, 0);
    int decimals = 2 + (int) (seed % 2);
    double step = Math.pow(10, -decimals);
    // a corner moves by half a step in each coordinate, and so may the whole fit on few corners
    checkFound("bore-rounded-" + seed, sample, sample.sketch.rounded(decimals).mesh(), step, step);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void findsABoreThatJitters(long seed) {
    Random random = new Random(seed);
    Sample sample = sample(random, 1, 0);
    double most = new double[] {2e-3, 5e-3, 10e-3}[(int) (seed % 3)];
    Mesh mesh = sample.sketch.jittered(most, random).mesh();
    checkFound("bore-jittered-" + seed, sample, mesh, 0, 2 * most);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void doesNotDependOnTheOrderOfFacetsAndVertices(long seed) {
    Random random = new Random(seed);
    Sample sample = sample(random, 1, 0);
    MeshSketch sketch = sample.sketch.jittered(2e-3 * (seed % 2), random);
    Bore one = find(sketch.mesh(), 0).get(0);
    Bore other = find(sketch.shuffled(random).mesh(), 0).get(0);
    assertThat(other.id()).isEqualTo(one.id());
    assertThat(other.wall()).hasSameSizeAs(one.wall());
    assertThat(other.radius()).isCloseTo(one.radius(), within(1e-9));
    assertThat(other.axis().origin().distance(one.axis().origin())).isLessThan(1e-9);
    assertThat(other.low().kind()).isEqualTo(one.low().kind());
    assertThat(other.low().loop()).hasSameSizeAs(one.low().loop());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void turnsWithThePart(long seed) {
    Random random = new Random(seed);
    Sample sample = sample(random, 1, 0);
    Bore one = find(sample.sketch.mesh(), 0).get(0);
    double angle = 7 * random.nextDouble();
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    var turn = new Affine3(c, s, 0, -s, c, 0, 0, 0, 1, 0, 0, 0);
    Bore turned = find(sample.sketch.placed(turn).mesh(), 0).get(0);
    assertThat(turned.radius()).isCloseTo(one.radius(), within(1e-9));
    assertThat(turned.axis().origin().distance(turn.apply(one.axis().origin()))).isLessThan(1e-9);
    assertThat(turned.wall()).containsExactly(one.wall());
  }
}
