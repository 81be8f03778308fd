package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.MeshSketch;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.WorkMesh;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Heights of a rough face over sloping patches. Reference: the face is sampled at its corners and
 * on a fine raster, which is never below the least height and comes close to it.
 */
class HeightAboveTest {

  private static final int SIDE = 40;

  private static double[][] heights(Random random) {
    double[][] z = new double[SIDE + 1][SIDE + 1];
    for (double[] row : z) {
      for (int k = 0; k < row.length; k++) {
        row[k] = 5 + random.nextDouble();
      }
    }
    return z;
  }

  /** A body with a flat bottom at 0, a rough top of unit squares, and four sides. */
  private static Mesh body(double[][] z) {
    MeshSketch sketch = new MeshSketch();
    int[][] top = new int[SIDE + 1][SIDE + 1];
    for (int i = 0; i <= SIDE; i++) {
      for (int j = 0; j <= SIDE; j++) {
        top[i][j] = sketch.point(new Vec3(i, j, z[i][j]));
      }
    }
    int bottom = sketch.point(new Vec3(SIDE / 2.0, SIDE / 2.0, 0));
    for (int i = 0; i < SIDE; i++) {
      for (int j = 0; j < SIDE; j++) {
        sketch.facet(top[i][j], top[i + 1][j], top[i + 1][j + 1]);
        sketch.facet(top[i][j], top[i + 1][j + 1], top[i][j + 1]);
      }
      sketch.facet(top[i + 1][0], top[i][0], bottom);
      sketch.facet(top[SIDE][i + 1], top[SIDE][i], bottom);
      sketch.facet(top[i][SIDE], top[i + 1][SIDE], bottom);
      sketch.facet(top[0][i], top[0][i + 1], bottom);
    }
    return sketch.mesh();
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void isTheLeastOfAllPlaces(long seed) {
    Random random = new Random(seed);
    double[][] z = heights(random);
    Mesh mesh = body(z);
    WorkMesh work = new WorkMesh(mesh, HalfEdges.of(mesh), FacetTree.of(mesh));
    double u = 3 + 10 * random.nextDouble();
    double v = 3 + 10 * random.nextDouble();
    double slope = 2 * random.nextDouble() - 1;
    double wide = 2 + 15 * random.nextDouble();
    double turn = random.nextDouble();
    Vec3 along = new Vec3(Math.cos(turn), Math.sin(turn), 0).times(wide);
    Vec3 across = new Vec3(-Math.sin(turn), Math.cos(turn), slope).times(2);
    Vec3 corner = new Vec3(u + 5, v, 2);
    List<Vec3> patch =
        List.of(corner, corner.plus(along), corner.plus(along).plus(across), corner.plus(across));
    double found = new HeightAbove(patch).over(work, 10);
    double sampled = Double.POSITIVE_INFINITY;
    int steps = 400;
    for (int i = 0; i <= steps; i++) {
      for (int j = 0; j <= steps; j++) {
        Vec3 p = corner.along(along, i / (double) steps).along(across, j / (double) steps);
        sampled = Math.min(sampled, height(z, p.x(), p.y()) - p.z());
      }
    }
    // a step of the raster is at most 17/400 mm, and the face is nowhere steeper than 2
    assertThat(found).isLessThanOrEqualTo(sampled + 1e-9).isCloseTo(sampled, within(0.15));
  }

  /**
   * Height over a patch that rises to a millimetre below a flat top and passes through an upright
   * face; of the face there is one facet, 10 mm long and running up at 45 degrees.
   *
   * @param high how high the facet is, across its length
   * @param lean sine of its lean: it faces up by so much
   */
  private static double overALeaningFacet(double high, double lean) {
    var sketch = new MeshSketch();
    int a = sketch.point(new Vec3(-20, -20, 7));
    int b = sketch.point(new Vec3(30, -20, 7));
    int c = sketch.point(new Vec3(5, 40, 7));
    tetrahedron(sketch, a, b, c, new Vec3(5, 0, 6.9));
    double r = Math.sqrt(0.5);
    double turned = Math.asin(lean / r); // about its long side, which takes r of it upwards
    Vec3 low = new Vec3(1.5, 0, 1.5);
    Vec3 along = new Vec3(r, 0, r);
    Vec3 across =
        new Vec3(r * Math.cos(turned), -Math.sin(turned), -r * Math.cos(turned)).times(high);
    int first = sketch.point(low);
    int second = sketch.point(low.along(along, 5).plus(across));
    tetrahedron(sketch, first, second, sketch.point(low.along(along, 10)), new Vec3(5, 0, -100));
    Mesh mesh = sketch.mesh();
    WorkMesh work = new WorkMesh(mesh, HalfEdges.of(mesh), FacetTree.of(mesh));
    List<Vec3> patch =
        List.of(new Vec3(3, -2, 4), new Vec3(7, -2, 4), new Vec3(7, 2, 6), new Vec3(3, 2, 6));
    return new HeightAbove(patch).over(work, 12);
  }

  /** A facet that faces up, over a point so that all others face down or are upright. */
  private static void tetrahedron(MeshSketch sketch, int a, int b, int c, Vec3 below) {
    int d = sketch.point(below);
    sketch.facet(a, b, c);
    sketch.facet(b, a, d);
    sketch.facet(c, b, d);
    sketch.facet(a, c, d);
  }

  @ParameterizedTest(name = "{0} mm high, leaning {1}")
  @CsvSource({"0.3, 0.05", "0.1, 0.15", "0.006, 0.22"})
  void needlesOfAnUprightFaceThatNoiseLeansHideNothing(double high, double lean) {
    assertThat(overALeaningFacet(high, lean)).isCloseTo(1, within(1e-9));
  }

  @ParameterizedTest(name = "{0} mm high, leaning {1}")
  @CsvSource({"1, 0.05", "0.3, 0.15", "0.1, 0.3", "0.006, 0.3"})
  void facetsThatLeanByMoreThanNoiseCount(double high, double lean) {
    assertThat(overALeaningFacet(high, lean)).isCloseTo(0, within(1e-9));
  }

  private static double height(double[][] z, double x, double y) {
    int i = (int) x;
    int j = (int) y;
    double s = x - i;
    double t = y - j;
    return s >= t
        ? z[i][j] + s * (z[i + 1][j] - z[i][j]) + t * (z[i + 1][j + 1] - z[i + 1][j])
        : z[i][j] + t * (z[i][j + 1] - z[i][j]) + s * (z[i + 1][j + 1] - z[i][j + 1]);
  }
}
