package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.edit.ConvexCut;
import gable.edit.ConvexCut.CutResult;
import gable.fixture.Edits;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.WorkMesh;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.ConvexTool;
import gable.plan.Operation;
import gable.plan.ToolPlane;
import gable.reshaper.GableRoof;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.geometry.euclidean.threed.ConvexVolume;
import org.apache.commons.geometry.euclidean.threed.Planes;
import org.apache.commons.geometry.euclidean.threed.RegionBSPTree3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.mesh.SimpleTriangleMesh;
import org.apache.commons.numbers.core.Precision;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Whole results, from finding to proof, against a reference: Apache Commons Geometry 1.0, the
 * difference of binary space partitions of the part and of an ideal roof that is laid out here from
 * the polygon of the bore alone. And volumes of roofs between curved mouths in closed form.
 */
class RoofReferenceTest {

  private static final Precision.DoubleEquivalence FINE =
      Precision.doubleEquivalenceOfEpsilon(1e-9);

  private static final double RADIUS = 4;
  private static final int SIDES = 32;
  private static final double PHASE = 0.05;

  /** The hole of a block lies along −y, its v is up. */
  private static final Affine3 LYING = Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO);

  @Test
  void aThroughBore() {
    agrees(block().ring(ring(0)).ring(ring(20)).through().placed(LYING).mesh(), -30, 10);
  }

  /**
   * A wall whose rows of corners are staggered, so that the roof has to stand a hair inside it, and
   * which leans almost too much for a roof: flanks are nearly flat in the section. Derived: the
   * ridge is the point of the roof that is farthest from the axis, at r / cos α, and a hair and
   * what corners stray more; a flank that went on beside the bore would lead farther.
   */
  @ParameterizedTest(name = "{0} degrees")
  @CsvSource({"30", "40", "44", "44.6"})
  void aRoofOverAStaggeredBoreThatLeansTakesNothingFarFromIt(double degrees) {
    double half = Math.PI / 72;
    Mesh before =
        block()
            .ring(Ring.round(RADIUS, 72, PHASE, 0))
            .ring(Ring.round(RADIUS, 72, PHASE + half, 10))
            .ring(Ring.round(RADIUS, 72, PHASE, 20))
            .through()
            .placed(LYING.then(leaning(Math.toRadians(degrees))))
            .mesh();
    Mesh after = roofed(before);
    Vec3 axis = LYING.then(leaning(Math.toRadians(degrees))).applyVector(Vec3.Z);
    double ridge = RADIUS * Math.cos(Math.toRadians(degrees)) / Math.cos(Math.PI / 4);
    for (int k = before.vertexCount(); k < after.vertexCount(); k++) {
      assertThat(after.point(k).cross(axis).norm()).isLessThan(ridge + 0.02);
    }
  }

  /** A turn about x by which what points along −y comes to point down. */
  private static Affine3 leaning(double angle) {
    double s = Math.sin(angle);
    double c = Math.cos(angle);
    return Affine3.rows(Vec3.X, new Vec3(0, c, s), new Vec3(0, -s, c), Vec3.ZERO);
  }

  @Test
  void aBlindBore() {
    agrees(block().ring(ring(0)).ring(ring(12)).blind(20).placed(LYING).mesh(), -12, 10);
  }

  @ParameterizedTest(name = "{0} degrees")
  @CsvSource({"-45", "-20", "30", "45"})
  void aBoreWithASlantedMouth(double degrees) {
    double slope = Math.tan(Math.toRadians(degrees));
    Mesh part =
        block()
            .slopes(slope, 0)
            .ring(Ring.slanted(RADIUS, SIDES, PHASE, 0, slope))
            .ring(ring(30))
            .through()
            .placed(LYING)
            .mesh();
    agrees(part, -40, 30);
  }

  @Test
  void coaxialBoresInTwoLugs() {
    MeshSketch near = block().ring(ring(0)).ring(ring(8)).through();
    MeshSketch far = block().ring(ring(14)).ring(ring(25)).through();
    agrees(near.add(far).placed(LYING).mesh(), -30, 10);
  }

  @ParameterizedTest(name = "pipe upright: {0}")
  @CsvSource({"true, 69.952173", "false, 63.082498"})
  void aBoreThroughARoundBarLosesWhatTheClosedFormSays(boolean upright, double expected) {
    // derived: bore of 32 facets, R 4, a vertex on top, through the middle of a cylinder R 10; the
    // mouth is meshed with 512 facets, which costs less than 0.1 % of the volume
    Mesh bar = bar(512, upright);
    WorkMesh work = work(bar);
    CutResult drilled = ConvexCut.of(work, drill(), Operation.SUBTRACT, any -> true, p -> p, 1e-6);
    Mesh before = Edits.applied(bar, ((CutResult.Done) drilled).edit());

    Mesh after = roofed(before);

    assertThat(before.volume() - after.volume()).isCloseTo(expected, within(1e-3 * expected));
  }

  private static HoleBlock block() {
    return HoleBlock.ofHalfWidth(15);
  }

  private static Ring ring(double w) {
    return Ring.round(RADIUS, SIDES, PHASE, w);
  }

  /** Compares the reshaped part with the part less the ideal roof between two values of y. */
  private static void agrees(Mesh before, double from, double to) {
    Mesh after = roofed(before);
    RegionBSPTree3D expected = RegionBSPTree3D.empty();
    expected.difference(tree(before), roof(from, to));
    // new points are on a grid of 1e-6 mm; the faces of the roof have an area below 500 mm²
    assertThat(after.volume()).isCloseTo(expected.getSize(), within(5e-4));
    RegionBSPTree3D ours = tree(after);
    Random random = new Random(7);
    for (int probe = 0; probe < 2000; probe++) {
      // in and around the roof, where the two could differ
      Vector3D p =
          Vector3D.of(
              8 * random.nextDouble() - 4,
              (to - from + 2) * random.nextDouble() + from - 1,
              6 * random.nextDouble() + 1);
      assertThat(ours.contains(p)).as("%s", p).isEqualTo(expected.contains(p));
    }
  }

  private static Mesh roofed(Mesh before) {
    Result result = ProvedRun.of(before, List.of(new GableRoof()));
    assertThat(result.features()).isNotEmpty();
    assertThat(result.features())
        .allSatisfy(f -> assertThat(f.changes().get(0).profile()).contains("peaked"));
    Mesh after = Edits.applied(before, result.edit());
    assertThat(HalfEdges.of(after).closed()).isTrue();
    return after;
  }

  /** Everything between the two lines at 45 degrees on the polygon and the chord of their feet. */
  private static RegionBSPTree3D roof(double from, double to) {
    Vec3 left = foot(-1);
    Vec3 right = foot(1);
    Vec3 chord = right.minus(left);
    List<org.apache.commons.geometry.euclidean.threed.Plane> bounds =
        List.of(
            bound(left, new Vec3(-1, 0, 1)),
            bound(right, new Vec3(1, 0, 1)),
            bound(left, new Vec3(chord.z(), 0, -chord.x())),
            bound(new Vec3(0, from, 0), new Vec3(0, -1, 0)),
            bound(new Vec3(0, to, 0), new Vec3(0, 1, 0)));
    return ConvexVolume.fromBounds(bounds).toTree();
  }

  private static Vec3 foot(int side) {
    Vec3 best = Vec3.ZERO;
    for (int k = 0; k < SIDES; k++) {
      double angle = PHASE + 2 * Math.PI * k / SIDES;
      Vec3 corner = new Vec3(RADIUS * Math.cos(angle), 0, RADIUS * Math.sin(angle));
      Vec3 normal = new Vec3(side, 0, 1);
      best = normal.dot(corner) > normal.dot(best) ? corner : best;
    }
    return best;
  }

  private static org.apache.commons.geometry.euclidean.threed.Plane bound(Vec3 p, Vec3 n) {
    return Planes.fromPointAndNormal(
        Vector3D.of(p.x(), p.y(), p.z()), Vector3D.of(n.x(), n.y(), n.z()), FINE);
  }

  private static RegionBSPTree3D tree(Mesh mesh) {
    SimpleTriangleMesh.Builder builder = SimpleTriangleMesh.builder(FINE);
    for (int vertex = 0; vertex < mesh.vertexCount(); vertex++) {
      builder.addVertex(Vector3D.of(mesh.x(vertex), mesh.y(vertex), mesh.z(vertex)));
    }
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      builder.addFace(mesh.corner(facet, 0), mesh.corner(facet, 1), mesh.corner(facet, 2));
    }
    return builder.build().toTree();
  }

  private static WorkMesh work(Mesh mesh) {
    return new WorkMesh(mesh, HalfEdges.of(mesh), FacetTree.of(mesh));
  }

  /** A cylinder R 10, 40 long, about z or about x. */
  private static Mesh bar(int sides, boolean upright) {
    MeshSketch sketch = new MeshSketch();
    int[][] rings = new int[2][sides];
    for (int end = 0; end < 2; end++) {
      for (int k = 0; k < sides; k++) {
        double angle = 2 * Math.PI * k / sides;
        double along = end == 0 ? -20 : 20;
        double a = 10 * Math.cos(angle);
        double b = 10 * Math.sin(angle);
        rings[end][k] = sketch.point(upright ? new Vec3(a, b, along) : new Vec3(along, a, b));
      }
    }
    for (int k = 0; k < sides; k++) {
      int next = (k + 1) % sides;
      sketch.quad(rings[0][k], rings[0][next], rings[1][next], rings[1][k]);
    }
    for (int k = 1; k + 1 < sides; k++) {
      sketch.facet(rings[0][0], rings[0][k + 1], rings[0][k]);
      sketch.facet(rings[1][0], rings[1][k], rings[1][k + 1]);
    }
    return sketch.mesh();
  }

  private static ConvexTool drill() {
    List<ToolPlane> planes = new ArrayList<>();
    for (int k = 0; k < SIDES; k++) {
      double a = Math.PI / 2 + 2 * Math.PI * k / SIDES;
      double b = Math.PI / 2 + 2 * Math.PI * (k + 1) / SIDES;
      Vec3 from = new Vec3(RADIUS * Math.cos(a), 0, RADIUS * Math.sin(a));
      Vec3 to = new Vec3(RADIUS * Math.cos(b), 0, RADIUS * Math.sin(b));
      Vec3 normal = new Vec3(to.z() - from.z(), 0, from.x() - to.x()).unit();
      planes.add(new ToolPlane(Plane.through(from, normal), 0, ToolPlane.Role.FLANK));
    }
    for (int end : new int[] {-1, 1}) {
      Vec3 outward = new Vec3(0, end, 0);
      planes.add(new ToolPlane(Plane.through(outward.times(15), outward), 0, ToolPlane.Role.END));
    }
    return ConvexTool.of(planes, Vec3.ZERO, 60);
  }
}
