package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.fixture.ModelSketch;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.pipeline.Settings.MixedOrientation;
import java.io.ByteArrayInputStream;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The hint that vertices are repeated, for an object that must stay as it is. */
class RepeatedVerticesTest {

  private static final Affine3 ON_ITS_SIDE =
      Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), new Vec3(50, 0, 20));

  private static final Settings LEAVE =
      Settings.usual().withMixedOrientation(MixedOrientation.LEAVE);

  /** A block twice, standing and on its side, every triangle with vertices of its own. */
  private static byte[] severalWaysUp() {
    HoleBlock block =
        HoleBlock.ofHalfWidth(10).ring(Ring.round(4, 32, 0, 0)).ring(Ring.round(4, 32, 0, 20));
    Mesh mesh = block.through().mesh();
    var apart = new MeshSketch();
    for (int f = 0; f < mesh.facetCount(); f++) {
      apart.facet(
          apart.point(mesh.point(mesh.corner(f, 0))),
          apart.point(mesh.point(mesh.corner(f, 1))),
          apart.point(mesh.point(mesh.corner(f, 2))));
    }
    return new ModelSketch()
        .object(1, "block", apart)
        .item(1)
        .item(1, ON_ITS_SIDE)
        .packed()
        .bytes();
  }

  private static List<String> hints(Settings settings) {
    Input input = Input.stream("twice.3mf", new ByteArrayInputStream(severalWaysUp()));
    FileResult result = Gable.installed().inspect(input, settings, Observer.NONE);
    assertThat(result).isInstanceOf(FileResult.Unchanged.class);
    return result.notices().stream()
        .filter(notice -> notice.code().equals("vertices-repeated"))
        .map(Notice::message)
        .toList();
  }

  @Test
  void anObjectThatIsLeftWhollyGetsTheHint() {
    assertThat(hints(LEAVE))
        .isNotEmpty()
        .allMatch(message -> message.endsWith("--join-vertices shares them in the file, too"));
  }

  @Test
  void whoAskedForJoiningIsToldThatTheObjectMustStay() {
    assertThat(hints(LEAVE.withJoinVertices(true)))
        .isNotEmpty()
        .allMatch(message -> message.endsWith("since the object must stay as it is"));
  }
}
