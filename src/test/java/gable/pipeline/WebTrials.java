package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import gable.feature.Partner;
import gable.fixture.Convex;
import gable.fixture.Edits;
import gable.fixture.Lathe;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.pipeline.ObjectReshaper.Change;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Limits;
import gable.plan.Reshaper;
import gable.reshaper.Gusset;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Parts and partners with which webs and slots are tried. */
final class WebTrials {

  private WebTrials() {}

  static final List<Reshaper> GUSSET = List.of(new Gusset());
  static final Affine3 LYING = Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO);
  static final Vec3 DOWN = new Vec3(0, 0, -1);

  static Map<String, Partner> socket(double radius, double length, Vec3 web) {
    return Map.of("B1", new Partner("pin", radius, length, Optional.of(web)));
  }

  static Mesh webbed(Mesh mesh, Map<String, Partner> partners) {
    Result result = ProvedRun.of(mesh, GUSSET, Limits.usual(), partners);
    assertThat(change(result).reason()).isEmpty();
    Mesh after = Edits.applied(mesh, result.edit());
    assertThat(HalfEdges.of(after).closed()).isTrue();
    return after;
  }

  static Change change(Result result) {
    assertThat(result.features()).hasSize(1);
    return result.features().get(0).changes().get(0);
  }

  static String code(Result result) {
    return change(result).reason().orElseThrow().code();
  }

  static Map<String, Partner> joint(double radius, double length) {
    return Map.of("P1", new Partner("bore", radius + 0.1, length + 1, Optional.of(DOWN)));
  }

  static List<Plane> stud(double z) {
    return Convex.prism(new Vec3(0, -2, z), new Vec3(0, 8, z), 3, 32, 0.1);
  }

  static MeshSketch pin(int sides, double radius, double length, double phase) {
    double wide = 3 * (radius + length);
    return Lathe.ofSides(sides, phase)
        .ring(-3, wide)
        .ring(0, wide)
        .ring(0, radius)
        .ring(length, radius)
        .sketch();
  }
}
