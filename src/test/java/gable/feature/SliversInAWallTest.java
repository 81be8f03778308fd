package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Facets too thin to have a direction, inside a wall, as programs leave them that split edges:
 * along one diagonal of a wall of ten facets lie two of them side by side, and at the end of one a
 * third.
 */
class SliversInAWallTest {

  private static final double LENGTH = 20;

  /** So far from an end of the diagonal were edges split, in millimetres. */
  private static final double SPLIT = 0.02;

  /** Without them the wall would have a gap as long as itself, which ends at both rims. */
  @ParameterizedTest(name = "{0} grids high")
  @ValueSource(doubles = {0.5, 1, 3, 5})
  void twoSideBySideBelongToTheWall(double steps) {
    Ring ring = Ring.round(4, 10, 0.1, 0);
    Mesh clean = HoleBlock.ofHalfWidth(10).ring(ring).ring(ring.at(LENGTH)).through().mesh();
    Tolerances tolerances = Tolerances.forModel(clean.box().reach(), 0);
    Mesh mesh = slivered(clean, ring, steps * tolerances.coordinateGrid());
    List<Feature> found = FeatureFinder.find(mesh, HalfEdges.of(mesh), tolerances).features();
    assertThat(found).hasSize(1);
    Bore bore = (Bore) found.get(0);
    assertThat(bore.shape()).isEqualTo(BoreShape.ROUND);
    assertThat(bore.high().wMin() - bore.low().wMax()).isCloseTo(LENGTH, within(1e-9));
    assertThat(bore.wall()).hasSize(2 * 10 + 6);
  }

  private static Mesh slivered(Mesh clean, Ring ring, double height) {
    List<Vec3> quad = new ArrayList<>(ring.points().subList(0, 2));
    quad.addAll(ring.at(LENGTH).points().subList(0, 2));
    MeshSketch sketch = new MeshSketch();
    for (int v = 0; v < clean.vertexCount(); v++) {
      sketch.point(clean.point(v));
    }
    List<int[]> pair = new ArrayList<>();
    for (int f = 0; f < clean.facetCount(); f++) {
      int[] corners = {clean.corner(f, 0), clean.corner(f, 1), clean.corner(f, 2)};
      if (Arrays.stream(corners).allMatch(v -> quad.contains(clean.point(v)))) {
        pair.add(corners);
      } else {
        sketch.facet(corners[0], corners[1], corners[2]);
      }
    }
    assertThat(pair).hasSize(2);
    split(sketch, clean, pair, height);
    return sketch.mesh();
  }

  private static boolean has(int[] facet, int vertex) {
    return Arrays.stream(facet).anyMatch(v -> v == vertex);
  }

  /** Puts the slivers along the edge that two facets share. */
  private static void split(MeshSketch sketch, Mesh clean, List<int[]> pair, double height) {
    int[] one = pair.get(0);
    int[] two = pair.get(1);
    int apex = 0;
    while (has(two, one[apex])) {
      apex++;
    }
    int b = one[apex];
    int d = one[(apex + 1) % 3];
    int a = one[(apex + 2) % 3];
    int c = Arrays.stream(two).filter(v -> v != a && v != d).findFirst().orElseThrow();
    Vec3 along = clean.point(d).minus(clean.point(a)).unit();
    Vec3 aside = clean.point(b).minus(clean.point(a));
    aside = aside.along(along, -aside.dot(along)).unit();
    int m = sketch.point(clean.point(a).along(along, SPLIT).along(aside, height));
    int y = sketch.point(clean.point(a).along(along, SPLIT / 2).along(aside, 1.5 * height));
    int n = sketch.point(clean.point(d).along(along, -SPLIT).along(aside, -height));
    int[][] facets = {
      {d, a, m}, {m, a, y}, {y, a, b}, {m, y, b}, {d, m, b}, {a, d, n}, {n, d, c}, {a, n, c}
    };
    for (int[] facet : facets) {
      sketch.facet(facet[0], facet[1], facet[2]);
    }
  }
}
