package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.verify.MeshCheck.Crossing;
import gable.verify.MeshCheck.Report;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Expected values are derived: the solids are made from them. */
class MeshCheckTest {

  static MeshSketch cube(Vec3 from, double edge) {
    MeshSketch sketch = new MeshSketch();
    int[] c = new int[8];
    for (int k = 0; k < 8; k++) {
      c[k] =
          sketch.point(from.plus(new Vec3(edge * (k & 1), edge * (k >> 1 & 1), edge * (k >> 2))));
    }
    sketch.quad(c[0], c[2], c[3], c[1]);
    sketch.quad(c[4], c[5], c[7], c[6]);
    sketch.quad(c[0], c[1], c[5], c[4]);
    sketch.quad(c[2], c[6], c[7], c[3]);
    sketch.quad(c[0], c[4], c[6], c[2]);
    sketch.quad(c[1], c[3], c[7], c[5]);
    return sketch;
  }

  private static MeshSketch bored() {
    return HoleBlock.ofHalfWidth(10)
        .ring(Ring.round(4, 32, 0.1, 0))
        .ring(Ring.round(4, 32, 0.1, 20))
        .through();
  }

  @Test
  void findsACubeSound() {
    Report report = MeshCheck.of(cube(Vec3.ZERO, 2).mesh());
    assertThat(report.sound()).isTrue();
    assertThat(report.shells()).isEqualTo(1);
    assertThat(report.genus()).hasValue(0);
    assertThat(report.volume()).isCloseTo(8, within(1e-12));
  }

  @Test
  void countsAHoleAsOneHandle() {
    Report report = MeshCheck.of(bored().mesh());
    assertThat(report.sound()).isTrue();
    assertThat(report.genus()).hasValue(1);
  }

  @Test
  void countsShells() {
    MeshSketch two =
        cube(Vec3.ZERO, 1)
            .add(cube(new Vec3(3, 0, 0), 1))
            .add(bored().placed(Affine3.scale(0.01)).placed(shift(9)));
    Report report = MeshCheck.of(two.mesh());
    assertThat(report.sound()).isTrue();
    assertThat(report.shells()).isEqualTo(3);
    assertThat(report.genus()).hasValue(1);
  }

  private static Affine3 shift(double x) {
    return Affine3.of(1, 0, 0, 0, 1, 0, 0, 0, 1, x, 0, 0);
  }

  @Test
  void findsOverlapAndTouchOfTwoShells() {
    for (double x : new double[] {0.5, 1}) {
      Report report = MeshCheck.of(cube(Vec3.ZERO, 1).add(cube(new Vec3(x, 0.25, 0.25), 1)).mesh());
      assertThat(report.closed()).isTrue();
      assertThat(report.crossings()).isPositive();
      assertThat(report.sound()).isFalse();
    }
  }

  @Test
  void looksForCrossingsOnlyWhereItIsTold() {
    Mesh mesh =
        cube(Vec3.ZERO, 1)
            .add(cube(new Vec3(0.5, 0.25, 0.25), 1))
            .add(cube(new Vec3(9, 0, 0), 1))
            .mesh();
    Report far = MeshCheck.near(mesh, List.of(new Box3(new Vec3(8, 0, 0), new Vec3(11, 1, 1))));
    assertThat(far.crossings()).isZero();
    // a box on one facet of each pair finds the pair, once
    Report near = MeshCheck.near(mesh, List.of(new Box3(new Vec3(1.5, 0, 0), new Vec3(1.5, 2, 2))));
    Report all = MeshCheck.of(mesh);
    assertThat(near.crossings()).isBetween(1, all.crossings());
    assertThat(all.firstCrossing()).isPresent();
    Crossing first = all.firstCrossing().orElseThrow();
    assertThat(first.first()).isLessThan(first.second());
  }

  @Test
  void findsOpenAndBadEdges() {
    MeshSketch open = cube(Vec3.ZERO, 1);
    int a = open.point(new Vec3(5, 0, 0));
    open.facet(a, open.point(new Vec3(6, 0, 0)), open.point(new Vec3(5, 1, 0)));
    Report report = MeshCheck.of(open.mesh());
    assertThat(report.openEdges()).isEqualTo(3);
    assertThat(report.genus()).isEmpty();
    MeshSketch doubled = cube(Vec3.ZERO, 1);
    doubled.facet(0, 2, 3);
    assertThat(MeshCheck.of(doubled.mesh()).badEdges()).isEqualTo(3);
    assertThat(MeshCheck.of(doubled.mesh()).crossings()).isPositive();
  }

  @Test
  void findsAnInsideOutSolid() {
    Mesh mesh = cube(Vec3.ZERO, 1).mesh();
    int[] corners = mesh.copyOfCorners();
    for (int c = 0; c < corners.length; c += 3) {
      int second = corners[c + 1];
      corners[c + 1] = corners[c + 2];
      corners[c + 2] = second;
    }
    Report report = MeshCheck.of(Mesh.of(mesh.copyOfPoints(), corners));
    assertThat(report.closed()).isTrue();
    assertThat(report.volume()).isCloseTo(-1, within(1e-12));
    assertThat(report.sound()).isFalse();
  }

  @Test
  void findsAPinchedVertex() {
    Mesh two = cube(Vec3.ZERO, 1).add(cube(new Vec3(1, 1, 1), 1)).mesh();
    int[] corners = two.copyOfCorners();
    for (int c = 0; c < corners.length; c++) {
      corners[c] = corners[c] == 8 ? 7 : corners[c]; // the corners at (1, 1, 1)
    }
    Report report = MeshCheck.of(Mesh.of(two.copyOfPoints(), corners));
    assertThat(report.pinchedVertices()).isEqualTo(1);
    assertThat(report.crossings()).isZero();
    assertThat(report.shells()).isEqualTo(2);
    assertThat(report.genus()).hasValue(0);
  }

  @Test
  void findsFacetsWithoutAreaOnlyInSinglePrecision() {
    MeshSketch sliver = cube(Vec3.ZERO, 1);
    Mesh mesh = sliver.placed(shift(100)).mesh();
    double[] points = mesh.copyOfPoints();
    points[0] += 1e-9; // half the float step at 100 is 4e-6
    Mesh moved = Mesh.of(points, mesh.copyOfCorners());
    assertThat(MeshCheck.inSinglePrecision(moved).x(0)).isEqualTo(100);
    points[3] = points[0] + 1e-9;
    points[4] = points[1];
    points[5] = points[2];
    Mesh thin = Mesh.of(points, mesh.copyOfCorners());
    assertThat(MeshCheck.of(thin).flatFacets()).isZero();
    assertThat(MeshCheck.of(MeshCheck.inSinglePrecision(thin)).flatFacets()).isEqualTo(2);
  }
}
