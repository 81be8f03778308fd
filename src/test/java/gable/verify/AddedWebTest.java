package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.edit.ConvexCut;
import gable.edit.ConvexCut.CutResult;
import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.fixture.Convex;
import gable.geom.Affine3;
import gable.geom.Plane;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.plan.ConvexTool;
import gable.plan.Cut;
import gable.plan.Intent;
import gable.plan.Limits;
import gable.plan.Operation;
import gable.plan.ToolPlane;
import gable.plan.ToolPlane.Role;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Sound;
import gable.verify.Verdict.Unsound;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is added to a pin is judged by what shows of it, how it hangs, and its closed form. */
class AddedWebTest {

  /** A pin of 16 sides with one straight below, radius 3, 8 long, on a wall 4 thick. */
  private static Mesh part(double radius, double below) {
    Mesh wall = Convex.mesh(Convex.box(new Vec3(-20, -4, -below), new Vec3(20, 0, 20)));
    return Convex.with(
        wall, Convex.prism(new Vec3(0, -2, 0), new Vec3(0, 8, 0), radius, 16, Math.PI / 16));
  }

  private static List<ToolPlane> web(double slope, double back) {
    List<ToolPlane> planes = new ArrayList<>();
    Vec3 under = new Vec3(0, Math.sin(slope), -Math.cos(slope));
    planes.add(plane(Plane.through(new Vec3(0, 6, -3), under), Role.FLANK));
    planes.add(plane(Plane.through(new Vec3(0.4, 0, 0), Vec3.X), Role.FLANK));
    planes.add(plane(Plane.through(new Vec3(-0.4, 0, 0), Vec3.X.times(-1)), Role.FLANK));
    planes.add(plane(Plane.through(new Vec3(0, 0, -2.5), Vec3.Z), Role.BASE));
    planes.add(plane(Plane.through(new Vec3(0, back, 0), Vec3.Y.times(-1)), Role.BASE));
    return planes;
  }

  private static ToolPlane plane(Plane plane, Role role) {
    return new ToolPlane(plane, 0, role);
  }

  private static Feature pinOf(Mesh mesh) {
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    List<Feature> found = FeatureFinder.find(mesh, HalfEdges.of(mesh), tolerances).features();
    assertThat(found).hasSize(1);
    return found.get(0);
  }

  private static Verdict verdict(Mesh mesh, Feature pin, List<ToolPlane> planes) {
    WorkMesh work = new WorkMesh(mesh, HalfEdges.of(mesh), FacetTree.of(mesh));
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    ConvexTool tool = ConvexTool.of(planes, new Vec3(0, 2, -4), 200);
    CutResult result =
        ConvexCut.of(
            work, tool, Operation.ADD, any -> true, Trial::grid, tolerances.mergeDistance());
    MeshEdit edit = ((CutResult.Done) result).edit();
    Intent intent = new Intent(pin, new Cut(Operation.ADD, tool), Limits.usual(), 0, 1e-6);
    return new Judge(mesh.box(), Affine3.IDENTITY, tolerances).judge(work, edit, intent);
  }

  private static void refused(Verdict verdict, Proof proof, String words) {
    assertThat(verdict).isInstanceOf(Unsound.class);
    assertThat(((Unsound) verdict).proof()).isEqualTo(proof);
    assertThat(((Unsound) verdict).why()).contains(words);
  }

  @Test
  void aWebOfTheRightVolumePasses() {
    Mesh mesh = part(3, 40);

    Verdict verdict = verdict(mesh, pinOf(mesh), web(Math.PI / 4, -0.3));

    // the lowest side of the pin is level, 1.17 wide, at 3 cos 11.25 degrees: the web is 0.8 wide
    // and a triangle with both legs 9 - 3 cos 11.25 degrees (derived)
    double leg = 9 - 3 * Math.cos(Math.PI / 16);
    assertThat(verdict).isInstanceOf(Sound.class);
    assertThat(((Sound) verdict).evidence().volumeChange())
        .isCloseTo(0.8 * leg * leg / 2, within(1e-4));
  }

  @Test
  void aWebThatDoesNotReachTheWallIsRefused() {
    Mesh mesh = part(3, 40);

    refused(verdict(mesh, pinOf(mesh), web(Math.PI / 4, 0.5)), Proof.PLACE, "meant to be inside");
  }

  @Test
  void aWebThatHangsIsRefused() {
    Mesh mesh = part(3, 40);

    refused(
        verdict(mesh, pinOf(mesh), web(Math.toRadians(44.9), -0.3)), Proof.SLOPE, "hangs at 44.9");
  }

  @Test
  void aFootIsFlatOnThePlateOnly() {
    Mesh mesh = part(3, 7);
    for (double height : new double[] {0.004, 0.01}) {
      List<ToolPlane> planes = web(Math.PI / 4, -0.3);
      planes.add(plane(Plane.through(new Vec3(0, 0, height - 7), new Vec3(0, 0, -1)), Role.END));

      Verdict verdict = verdict(mesh, pinOf(mesh), planes);

      if (height < 0.005) {
        assertThat(verdict).isInstanceOf(Sound.class);
      } else {
        refused(verdict, Proof.SLOPE, "hangs at 0.0");
      }
    }
  }

  /** The pin of another part is a little thinner, so its closed form says another volume. */
  @Test
  void aVolumeThatIsNotThatOfTheFeatureIsRefused() {
    Mesh mesh = part(3, 40);

    refused(
        verdict(mesh, pinOf(part(2.999, 40)), web(Math.PI / 4, -0.3)),
        Proof.VOLUME,
        "by the planes of tool and feature");
  }
}
