package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bores of one size are worked on in an order that no turn about z changes. */
class EditOrderTest {

  @ParameterizedTest(name = "turned by {0} degrees")
  @ValueSource(doubles = {0, 50, 90, 180, 270, 301})
  void ordersEqualBoresByHeightAndThenByLengthHoweverThePartIsTurned(double degrees) {
    Affine3 turn = turn(Math.toRadians(degrees));
    List<Mesh> blocks =
        List.of(
            block(4, 20, new Vec3(0, 0, 30)),
            block(4, 20, new Vec3(60, 10, 0)),
            block(4, 26, new Vec3(-60, 0, 0)),
            block(5, 20, new Vec3(0, 90, 50)));
    Mesh mesh = together(blocks).mapped(turn);
    List<Feature> found =
        FeatureFinder.find(mesh, HalfEdges.of(mesh), Tolerances.forModel(mesh.box().reach(), 0))
            .features();
    assertThat(EditOrder.of(found, mesh))
        .extracting(EditOrderTest::words)
        .containsExactly("5.0 20 50", "4.0 26 0", "4.0 20 0", "4.0 20 30");
  }

  private static String words(Feature feature) {
    return Math.rint(feature.radius() * 1e3) / 1e3
        + " "
        + Math.round(feature.length())
        + " "
        + Math.round(feature.axis().origin().z());
  }

  /** A block with a lying bore through it, its axis at the height of a place. */
  private static Mesh block(double radius, double length, Vec3 place) {
    Affine3 lying = Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), place);
    return HoleBlock.ofHalfWidth(15)
        .ring(Ring.round(radius, 32, 0, 0))
        .ring(Ring.round(radius, 32, 0, length))
        .through()
        .placed(lying)
        .mesh();
  }

  private static Mesh together(List<Mesh> meshes) {
    List<Double> points = new ArrayList<>();
    List<Integer> corners = new ArrayList<>();
    for (Mesh mesh : meshes) {
      int base = points.size() / 3;
      for (double x : mesh.copyOfPoints()) {
        points.add(x);
      }
      for (int corner : mesh.copyOfCorners()) {
        corners.add(base + corner);
      }
    }
    return Mesh.of(
        points.stream().mapToDouble(Double::doubleValue).toArray(),
        corners.stream().mapToInt(Integer::intValue).toArray());
  }

  private static Affine3 turn(double angle) {
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    return Affine3.rows(new Vec3(c, s, 0), new Vec3(-s, c, 0), Vec3.Z, Vec3.ZERO);
  }
}
