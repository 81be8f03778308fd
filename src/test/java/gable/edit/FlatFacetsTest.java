package gable.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.Edits;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.verify.Judge;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * A cube of 10 mm with facets without area put in by hand; what it must be without them is known
 * from elementary geometry (derived, no source).
 */
class FlatFacetsTest {

  private static final double STEP = 1e-6;

  private static final double[] CUBE = {
    0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0, 0, 0, 10, 10, 0, 10, 10, 10, 10, 0, 10, 10
  };

  private static final int[] SIDES = {
    0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0,
    4, 3, 4, 7
  };

  /** Corner 6 twice: number 8 takes its place in two facets, and two facets without area join. */
  private static Mesh withDoubledCorner() {
    double[] points = Arrays.copyOf(CUBE, 27);
    points[24] = 10;
    points[25] = 10;
    points[26] = 10;
    int[] corners = Arrays.copyOf(SIDES, SIDES.length + 6);
    // facets 1-2-6 and 1-6-5 have edges to 2 and to 5 in common with the rest of the fan
    corners[3 * 6 + 2] = 8;
    corners[3 * 7 + 1] = 8;
    int[] flat = {2, 6, 8, 6, 5, 8};
    System.arraycopy(flat, 0, corners, SIDES.length, 6);
    return Mesh.of(points, corners);
  }

  /** A vertex on the edge 4-5 that only the facet below knows; a facet without height between. */
  private static Mesh withVertexOnLongSide() {
    double[] points = Arrays.copyOf(CUBE, 27);
    points[24] = 4;
    points[25] = 0;
    points[26] = 10;
    int[] corners = Arrays.copyOf(SIDES, SIDES.length + 6);
    int[] low = {0, 5, 8}; // was 0-5-4
    System.arraycopy(low, 0, corners, 15, 3);
    int[] added = {0, 8, 4, 5, 4, 8};
    System.arraycopy(added, 0, corners, SIDES.length, 6);
    return Mesh.of(points, corners);
  }

  private static WorkMesh work(Mesh mesh) {
    return new WorkMesh(mesh, HalfEdges.of(mesh), FacetTree.of(mesh));
  }

  private static Optional<MeshEdit> takenOut(Mesh mesh) {
    return FlatFacets.takenOut(work(mesh), mesh.box().grown(1), p -> true, STEP);
  }

  private static Judge judge(Mesh mesh) {
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    return new Judge(mesh.box(), Affine3.IDENTITY, tolerances);
  }

  @Test
  void verticesAtOnePlaceAreJoinedAndFacetsAlongThemGo() {
    Mesh mesh = withDoubledCorner();
    assertThat(HalfEdges.of(mesh).closed()).isTrue();

    MeshEdit edit = takenOut(mesh).orElseThrow();
    Mesh after = Edits.applied(mesh, edit);

    assertThat(after.facetCount()).isEqualTo(12);
    assertThat(HalfEdges.of(after).closed()).isTrue();
    assertThat(after.volume()).isCloseTo(1000, within(1e-9));
    assertThat(edit.removedCount()).isEqualTo(4);
    assertThat(judge(mesh).judgeTidy(work(mesh), edit, STEP)).isEmpty();
  }

  @Test
  void aFacetWithoutHeightGoesByTurningItsLongSide() {
    Mesh mesh = withVertexOnLongSide();
    assertThat(HalfEdges.of(mesh).closed()).isTrue();

    MeshEdit edit = takenOut(mesh).orElseThrow();
    Mesh after = Edits.applied(mesh, edit);

    assertThat(HalfEdges.of(after).closed()).isTrue();
    assertThat(after.volume()).isCloseTo(1000, within(1e-9));
    for (int facet = 0; facet < after.facetCount(); facet++) {
      assertThat(after.facetNormal(facet).norm()).isGreaterThan(1);
    }
    assertThat(judge(mesh).judgeTidy(work(mesh), edit, STEP)).isEmpty();
  }

  /**
   * The doubled corner a little apart, by a length just above the step: facets along it are lower
   * than the step whichever way they lie, so turning one gives another, round and round the corner.
   */
  @Test
  void turningComesToAnEndWhereEachTurnGivesAnotherFlatFacet() {
    for (double apart : new double[] {1.0001, 1.01, 1.1, 1.5}) {
      for (int way = 0; way < 26; way++) {
        Vec3 to = new Vec3(way % 3 - 1, way / 3 % 3 - 1, way / 9 - 1);
        double[] points = withDoubledCorner().copyOfPoints();
        Vec3 place = new Vec3(10, 10, 10).plus(to.times(apart * STEP / Math.max(to.norm(), 1)));
        points[24] = place.x();
        points[25] = place.y();
        points[26] = place.z();
        Mesh mesh = Mesh.of(points, withDoubledCorner().copyOfCorners());

        takenOut(mesh)
            .ifPresent(
                edit -> assertThat(HalfEdges.of(Edits.applied(mesh, edit)).closed()).isTrue());
      }
    }
  }

  @Test
  void aMeshWithoutSuchFacetsIsLeft() {
    assertThat(takenOut(Mesh.of(CUBE, SIDES))).isEmpty();
  }

  @Test
  void whatLiesElsewhereIsLeft() {
    Mesh mesh = withDoubledCorner();
    Vec3 corner = new Vec3(10, 10, 10);
    assertThat(
            FlatFacets.takenOut(work(mesh), mesh.box().grown(1), p -> p.distance(corner) > 1, STEP))
        .isEmpty();
  }

  @Test
  void anEditThatTakesAFacetWithAnAreaIsNotProved() {
    Mesh mesh = withDoubledCorner();
    MeshEdit edit = takenOut(mesh).orElseThrow();
    // facet 6 comes back with its corner at the other end of the edge: closed fails or place does
    int[] corners = new int[3 * edit.facetCount()];
    int[] sources = new int[edit.facetCount()];
    for (int c = 0; c < corners.length; c++) {
      corners[c] = edit.corner(c / 3, c % 3) == 6 ? 7 : edit.corner(c / 3, c % 3);
      sources[c / 3] = edit.source(c / 3);
    }
    int[] removed = new int[edit.removedCount()];
    Arrays.setAll(removed, edit::removed);
    MeshEdit bad =
        new MeshEdit(removed, new double[0], corners, sources, new boolean[sources.length]);

    assertThat(judge(mesh).judgeTidy(work(mesh), bad, STEP)).isPresent();
  }

  @Test
  void anEditThatFoldsTwoFacetsTogetherIsNotProvedThoughItIsClosed() {
    Mesh mesh = withVertexOnLongSide();
    // the vertex in the middle of the edge is joined with its end: closed, but facets lose an area
    int[] removed = {2, 4, 5, 12, 13};
    int[] corners = {4, 5, 6, 0, 1, 5, 0, 5, 4};
    MeshEdit bad =
        new MeshEdit(removed, new double[0], corners, new int[] {2, 4, 5}, new boolean[3]);
    assertThat(HalfEdges.of(Edits.applied(mesh, bad)).closed()).isTrue();

    assertThat(judge(mesh).judgeTidy(work(mesh), bad, STEP)).isPresent();
  }
}
