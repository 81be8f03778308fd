package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Expected values are derived from how the parts are made, shares from the class text. */
class HollowsTest {

  private static final double NEEDLE = 0.12;

  private static int[] seeds(Mesh mesh) {
    Hollows hollows = Hollows.of(new Surface(mesh, HalfEdges.of(mesh), 1e-6, 0), NEEDLE);
    return IntStream.range(0, mesh.facetCount()).filter(hollows::isSeed).toArray();
  }

  /** A bore of radius 4 whose wall has facets of about a quarter of a millimetre. */
  private static MeshSketch fineBore() {
    HoleBlock block = HoleBlock.ofHalfWidth(10);
    for (int k = 0; k <= 20; k++) {
      block.ring(Ring.round(4, 100, 0.03 * k, 0.25 * k));
    }
    return block.through();
  }

  /** A plate of 40 by 40 facets on a side of 20, its top at the given height. */
  private static MeshSketch plate(DoubleBinaryOperator height) {
    MeshSketch sketch = new MeshSketch();
    for (int k = 0; k < 41 * 41; k++) {
      int row = k / 41;
      double x = 0.5 * row;
      double y = 0.5 * (k % 41);
      sketch.point(new Vec3(x, y, height.applyAsDouble(x, y)));
    }
    int apex = sketch.point(new Vec3(10, 10, -20));
    for (int row = 0; row < 40; row++) {
      for (int column = 0; column < 40; column++) {
        int at = 41 * row + column;
        sketch.quad(at, at + 41, at + 42, at + 1);
      }
      sketch.facet(row + 1, apex, row);
      sketch.facet(40 * 41 + row, apex, 40 * 41 + row + 1);
      sketch.facet(41 * row, apex, 41 * row + 41);
      sketch.facet(41 * row + 81, apex, 41 * row + 40);
    }
    return sketch;
  }

  @Test
  void keepsEveryFacetOfACleanBore() {
    Mesh mesh = fineBore().mesh();
    assertThat(seeds(mesh)).hasSize(2 * 100 * 20);
  }

  @Test
  void keepsMostFacetsOfABoreWithNoise() {
    Mesh mesh = fineBore().jittered(10e-3, new Random(1)).mesh();
    assertThat(seeds(mesh)).hasSizeGreaterThan(2 * 100 * 20 * 6 / 10);
  }

  @Test
  void dropsAReliefThatWaves() {
    Mesh mesh = plate((x, y) -> 2 * Math.sin(x) * Math.cos(y)).mesh();
    assertThat(HalfEdges.of(mesh).closed()).isTrue();
    assertThat(seeds(mesh)).isEmpty();
  }

  @Test
  void keepsTheBoreInAPieceThatHoldsAReliefToo() {
    Mesh mesh = fineBore().add(plate((x, y) -> 2 * Math.sin(x) * Math.cos(y))).mesh();
    assertThat(seeds(mesh)).hasSize(2 * 100 * 20);
  }

  /**
   * The ball is convex by 0.05 from facet to facet and rough by several times as much: by chance
   * some places are hollow. The share is an estimate.
   */
  @Test
  void dropsThreeFacetsInFourOfARoughBall() {
    Mesh mesh = ball(6, 60).jittered(0.05, new Random(2)).mesh();
    assertThat(HalfEdges.of(mesh).closed()).isTrue();
    assertThat(seeds(mesh).length).isLessThan(mesh.facetCount() / 4);
  }

  private static MeshSketch ball(double radius, int parts) {
    MeshSketch sketch = new MeshSketch();
    for (int row = 1; row < parts; row++) {
      double z = radius * Math.cos(Math.PI * row / parts);
      double r = radius * Math.sin(Math.PI * row / parts);
      for (int k = 0; k < 2 * parts; k++) {
        double angle = Math.PI * k / parts;
        sketch.point(new Vec3(r * Math.cos(angle), r * Math.sin(angle), z));
      }
    }
    int top = sketch.point(new Vec3(0, 0, radius));
    int bottom = sketch.point(new Vec3(0, 0, -radius));
    for (int k = 0; k < 2 * parts; k++) {
      int next = (k + 1) % (2 * parts);
      sketch.facet(top, k, next);
      for (int row = 0; row + 2 < parts; row++) {
        int at = 2 * parts * row;
        sketch.quad(at + k, at + 2 * parts + k, at + 2 * parts + next, at + next);
      }
      int last = 2 * parts * (parts - 2);
      sketch.facet(last + k, bottom, last + next);
    }
    return sketch;
  }

  @Test
  void choosesTheSameFacetsInAnyOrder() {
    Random random = new Random(3);
    MeshSketch sketch = fineBore().jittered(15e-3, random);
    Mesh one = sketch.mesh();
    Mesh other = sketch.shuffled(random).mesh();
    assertThat(middles(other, seeds(other))).isEqualTo(middles(one, seeds(one)));
  }

  /** Sums of the facets' corners, sorted. */
  private static double[] middles(Mesh mesh, int[] facets) {
    double[] sums =
        Arrays.stream(facets)
            .mapToDouble(f -> mesh.facetBox(f).min().dot(new Vec3(1, 7, 49)))
            .toArray();
    Arrays.sort(sums);
    return sums;
  }
}
