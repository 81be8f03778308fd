package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.Box;
import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What single precision makes of coordinates that went to print space and back. */
class SinglePrecisionTest {

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.3, 1.7, 2.9})
  void cornersThatFallTogetherInTheFileFallTogetherHowEverThePartIsTurned(double angle) {
    // the floats around 100 are 7.6e-6 apart, so that both x become 100; y is 0 in the file and
    // some 1e-15 on the way back from print space
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    Affine3 toPrint =
        Affine3.rows(new Vec3(c, s, 0), new Vec3(-s, c, 0), Vec3.Z, new Vec3(20, -30, 0));
    Mesh mesh = Box.of(99.999997, 0, 0, 100.000003, 50, 12.5).sketch().placed(toPrint).mesh();
    WorkMesh work = new WorkMesh(mesh, HalfEdges.of(mesh), FacetTree.of(mesh));
    MeshEdit nothing =
        new MeshEdit(new int[0], new double[0], new int[0], new int[0], new boolean[0]);
    Affine3 toObject = toPrint.inverse();
    Box3 box = mesh.box();
    Patch patch = Patch.of(work, nothing, box, 1);

    SinglePrecision single =
        new SinglePrecision(patch, toObject, SinglePrecision.step(box, toObject));

    assertThat(patch.vertexCount()).isEqualTo(8);
    for (int v = 0; v < 8; v++) {
      Vec3 p = single.point(v);
      assertThat(p.x()).isEqualTo(100);
      assertThat(p.y() + 0.0).isIn(0.0, 50.0);
      assertThat(p.z() + 0.0).isIn(0.0, 12.5);
    }
  }
}
