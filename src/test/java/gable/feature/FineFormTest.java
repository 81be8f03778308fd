package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Holes of other forms in fine facets, where each band of a wall is round within a few micrometres:
 * expected kinds follow from how the walls are made (derived).
 */
class FineFormTest {

  private static final int SIDES = 120;
  private static final int ROWS = 115;
  private static final double LENGTH = 60;

  /** A hole in a block, its wall in equal triangles; radius by angle and by w. */
  private static List<Feature> find(DoubleBinaryOperator radius) {
    HoleBlock block = HoleBlock.ofHalfWidth(25);
    for (int row = 0; row <= ROWS; row++) {
      double w = LENGTH * row / ROWS;
      List<Vec3> points = new ArrayList<>();
      for (int k = 0; k < SIDES; k++) {
        double angle = 2 * Math.PI * (k + 0.5 * (row % 2)) / SIDES;
        double r = radius.applyAsDouble(angle, w);
        points.add(new Vec3(r * Math.cos(angle), r * Math.sin(angle), w));
      }
      block.ring(new Ring(points));
    }
    Mesh mesh = block.through().mesh();
    return FeatureFinder.find(mesh, HalfEdges.of(mesh), Tolerances.forModel(mesh.box().reach(), 0))
        .features();
  }

  @Test
  void aRoundWallIsOneBore() {
    assertThat(find((angle, w) -> 10)).hasSize(1);
  }

  @Test
  void aTaperIsNoBore() {
    assertThat(find((angle, w) -> 10 + 0.05 * w)).isEmpty();
  }

  @Test
  void aSlightBarrelIsNoBore() {
    assertThat(find((angle, w) -> 10 + 0.3 * Math.sin(Math.PI * w / LENGTH))).isEmpty();
  }

  @Test
  void aBarrelIsNoBore() {
    assertThat(find((angle, w) -> 10 + 3 * Math.sin(Math.PI * w / LENGTH))).isEmpty();
  }

  @Test
  void anOvalIsNoBore() {
    assertThat(find((angle, w) -> 10 + 0.5 * Math.cos(2 * angle))).isEmpty();
  }

  @Test
  void flutesAreNoBores() {
    assertThat(find((angle, w) -> 10 + 0.5 * Math.cos(12 * angle))).isEmpty();
  }

  @Test
  void aRoundedThreadIsNoRoundBore() {
    assertThat(find((angle, w) -> 10 + 0.5 * Math.cos(angle + 2 * Math.PI * w / 3)))
        .noneMatch(feature -> ((Bore) feature).shape() == BoreShape.ROUND);
  }
}
