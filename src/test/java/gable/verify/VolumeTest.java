package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Box3;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.WorkMesh;
import gable.plan.ConvexTool;
import gable.plan.Operation;
import gable.plan.ToolPlane;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The second method for volumes, by itself. Expected values are derived from the shapes. */
class VolumeTest {

  private static ConvexTool box(Vec3 min, Vec3 max) {
    Vec3[] axes = {Vec3.X, Vec3.Y, Vec3.Z};
    List<ToolPlane> planes = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      planes.add(plane(axes[k], max.get(k)));
      planes.add(plane(axes[k].times(-1), -min.get(k)));
    }
    return ConvexTool.of(planes, min, 10 * max.distance(min));
  }

  private static ToolPlane plane(Vec3 normal, double offset) {
    return new ToolPlane(new Plane(normal, offset), 0, ToolPlane.Role.FLANK);
  }

  private static WorkMesh work(Mesh mesh) {
    return new WorkMesh(mesh, HalfEdges.of(mesh), FacetTree.of(mesh));
  }

  /** What a mesh fills of a tool, by facets that hide parts of it. */
  private static double filled(Mesh mesh, ConvexTool tool) {
    ToolBody body = ToolBody.of(tool, 0);
    ConvexClip work = new ConvexClip();
    double hidden = 0;
    for (int f = 0; f < mesh.facetCount(); f++) {
      hidden +=
          body.hiddenBehind(
              mesh.point(mesh.corner(f, 0)).minus(body.apex()),
              mesh.point(mesh.corner(f, 1)).minus(body.apex()),
              mesh.point(mesh.corner(f, 2)).minus(body.apex()),
              work);
    }
    int winding = Ray.winding(work(mesh), mesh.box(), body.apex()).orElseThrow();
    return winding * body.volume() - hidden;
  }

  @Test
  void aToolHasTheVolumeOfItsShape() {
    ToolBody body = ToolBody.of(box(new Vec3(1, 2, 3), new Vec3(4, 6, 8)), 0);
    assertThat(body.volume()).isCloseTo(60, within(1e-10));
    assertThat(body.box().min().distance(new Vec3(1, 2, 3))).isLessThan(1e-12);
    assertThat(body.box().max().distance(new Vec3(4, 6, 8))).isLessThan(1e-12);
  }

  @Test
  void cubesOverlapInABox() {
    Mesh cube = MeshCheckTest.cube(Vec3.ZERO, 2).mesh();
    Random random = new Random(5);
    for (int k = 0; k < 200; k++) {
      Vec3 min = new Vec3(random.nextDouble() * 4 - 2, random.nextDouble(), random.nextDouble());
      Vec3 size = new Vec3(1 + random.nextDouble(), 0.1 + random.nextDouble(), 2.5);
      Vec3 max = min.plus(size);
      double expected = 1;
      for (int axis = 0; axis < 3; axis++) {
        expected *= Math.max(0, Math.min(2, max.get(axis)) - Math.max(0, min.get(axis)));
      }
      assertThat(filled(cube, box(min, max))).isCloseTo(expected, within(1e-12));
    }
  }

  @Test
  void facesThatCoincideHideNothing() {
    Mesh cube = MeshCheckTest.cube(Vec3.ZERO, 2).mesh();
    assertThat(filled(cube, box(Vec3.ZERO, new Vec3(2, 2, 2)))).isCloseTo(8, within(1e-12));
    assertThat(filled(cube, box(new Vec3(2, 0, 0), new Vec3(3, 2, 2)))).isCloseTo(0, within(1e-12));
    assertThat(filled(cube, box(new Vec3(1, 0, 0), new Vec3(3, 2, 2)))).isCloseTo(4, within(1e-12));
  }

  @Test
  void aVoidInsideTheToolIsNotCounted() {
    Mesh outer = MeshCheckTest.cube(Vec3.ZERO, 4).mesh();
    Mesh inner = MeshCheckTest.cube(new Vec3(1.25, 1.5, 1.25), 1).mesh();
    double[] points = new double[48];
    int[] corners = new int[72];
    System.arraycopy(outer.copyOfPoints(), 0, points, 0, 24);
    System.arraycopy(inner.copyOfPoints(), 0, points, 24, 24);
    for (int c = 0; c < 36; c++) {
      corners[c] = outer.corner(c / 3, c % 3);
      corners[36 + c] = 8 + inner.corner(c / 3, 2 - c % 3); // turned inside out
    }
    Mesh hollow = Mesh.of(points, corners);
    assertThat(filled(hollow, box(new Vec3(1, 1, 1), new Vec3(3, 3, 3))))
        .isCloseTo(7, within(1e-12));
    assertThat(filled(hollow, box(new Vec3(-1, -1, -1), new Vec3(5, 5, 5))))
        .isCloseTo(63, within(1e-11));
    assertThat(filled(hollow, box(new Vec3(-1, -1, -1), new Vec3(2, 5, 5))))
        .isCloseTo(32 - 0.75, within(1e-11));
  }

  @Test
  void refusesAVolumeThatIsNotTheTools() {
    Trial trial = Trial.of(JudgePropertyTest.part(7));
    Slack slack = new Slack(1e-6, 1e-4);
    ToolBody right = ToolBody.of(trial.intent().cut().tool(), 0);
    PlaceProof places = places(trial, right, slack);
    assertThat(volume(trial, places, right)).isEmpty();

    Vec3 by = new Vec3(0, 0, 0.01);
    Box3 hint = trial.intent().cut().tool().box();
    List<ToolPlane> planes =
        right.planes().stream()
            .map(
                p -> new ToolPlane(p.plane().moved(p.plane().normal().dot(by)), p.snap(), p.role()))
            .toList();
    ToolBody raised = ToolBody.of(ConvexTool.of(planes, hint.min(), 2 * hint.diagonal()), 0);
    Optional<Unsound> fault = volume(trial, places, raised);
    assertThat(fault).isPresent();
    assertThat(fault.orElseThrow().proof()).isEqualTo(Proof.VOLUME);
  }

  private static PlaceProof places(Trial trial, ToolBody tool, Slack slack) {
    Patch patch = Patch.of(trial.work(), trial.edit(), tool.box(), 1e-4);
    PlaceProof places = new PlaceProof(patch, trial.edit(), tool, Operation.SUBTRACT, slack);
    assertThat(places.fault()).isEmpty();
    return places;
  }

  private static Optional<Unsound> volume(Trial trial, PlaceProof places, ToolBody tool) {
    Patch patch = Patch.of(trial.work(), trial.edit(), tool.box(), 1e-4);
    return new VolumeProof(patch, tool, places)
        .fault(trial.work(), trial.mesh().box(), Operation.SUBTRACT, false);
  }

  @Test
  void refusesAVolumeThatIsNotAreaTimesLength() {
    Trial trial = Trial.of(JudgeTest.block(15).mesh());
    ToolBody tool = ToolBody.of(trial.intent().cut().tool(), 0);
    Patch patch = Patch.of(trial.work(), trial.edit(), tool.box(), 1e-4);
    Slack slack = new Slack(1e-6, 1e-4);
    double exact = -20 * 16 * (1 - 4 * Math.sin(Math.PI / 16)); // 32-gon, see JudgeTest
    assertThat(ClosedForm.fault(patch, trial.intent(), tool, slack, exact, 1e-9)).isEmpty();
    for (double error : new double[] {-0.01, 0.01}) {
      Optional<Unsound> fault =
          ClosedForm.fault(patch, trial.intent(), tool, slack, exact + error, 1e-9);
      assertThat(fault).isPresent();
      assertThat(fault.orElseThrow().why()).contains("area times length");
    }
  }

  @Test
  void aRayTellsInsideFromOutside() {
    Mesh mesh = JudgeTest.block(15).mesh();
    WorkMesh work = work(mesh);
    assertThat(Ray.winding(work, mesh.box(), new Vec3(0, -10, 0))).hasValue(0);
    assertThat(Ray.winding(work, mesh.box(), new Vec3(0, -10, 5))).hasValue(1);
    assertThat(Ray.winding(work, mesh.box(), new Vec3(0, 10, 5))).hasValue(0);
    assertThat(Ray.winding(work, mesh.box(), new Vec3(15, -10, 5))).isEmpty();
    Mesh twice =
        MeshCheckTest.cube(Vec3.ZERO, 2).add(MeshCheckTest.cube(new Vec3(1, 1, 1), 2)).mesh();
    assertThat(Ray.winding(work(twice), twice.box(), new Vec3(1.5, 1.4, 1.3))).hasValue(2);
  }

  @Test
  void volumesDoNotDependOnThePlace() {
    Mesh cube = MeshCheckTest.cube(new Vec3(1000, 2000, 3000), 2).mesh();
    Vec3 min = new Vec3(1000.5, 1999, 2999);
    Vec3 max = new Vec3(1001.5, 2001, 3001);
    assertThat(filled(cube, box(min, max))).isCloseTo(1, within(1e-9));
  }
}
