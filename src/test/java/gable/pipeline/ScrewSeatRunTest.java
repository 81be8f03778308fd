package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.Edits;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.pipeline.ObjectReshaper.Result;
import gable.reshaper.GableRoof;
import gable.reshaper.LeadIn;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What becomes of lying bores with the seat of a countersunk screw (ISO 15065, ISO 273): they get
 * their roof, and every facet of the cone stays.
 */
class ScrewSeatRunTest {

  /** Takes w to +y and v to +z. */
  private static final Affine3 LYING = new Affine3(-1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0);

  @ParameterizedTest
  @CsvSource({"4.5, 9.4", "5.5, 10.4", "6.6, 12.6", "9, 17.3"})
  void theRoofEndsWhereTheConeBegins(double hole, double outer) {
    double depth = (outer - hole) / 2;
    Mesh mesh =
        HoleBlock.ofHalfWidth(outer)
            .ring(Ring.round(outer / 2, 48, 0.02, 0))
            .ring(Ring.round(hole / 2, 48, 0.02, depth))
            .ring(Ring.round(hole / 2, 48, 0.02, depth + 10))
            .through()
            .placed(LYING)
            .mesh();

    Result result = ProvedRun.of(mesh, List.of(new GableRoof(), new LeadIn()));

    assertThat(result.features().get(0).changes().get(0).profile()).contains("peaked");
    Mesh after = Edits.applied(mesh, result.edit());
    assertThat(HalfEdges.of(after).closed()).isTrue();
    Set<String> lost = cone(mesh, depth);
    assertThat(lost).hasSize(96);
    lost.removeAll(cone(after, depth));
    assertThat(lost).as("facets of the cone that are no more").isEmpty();
    // the far mouth is none of the seat's, and is eased when that is asked for
    assertThat(result.features().get(0).changes().get(1).profile()).contains("one mouth");
  }

  /** Facets that lie wholly within the depth of the cone and on it, by their corners. */
  private static Set<String> cone(Mesh mesh, double depth) {
    Set<String> facets = new TreeSet<>();
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      Set<String> corners = new TreeSet<>();
      boolean inside = true;
      boolean level = true;
      for (int k = 0; k < 3; k++) {
        Vec3 p = mesh.point(mesh.corner(facet, k));
        inside &= p.y() <= depth + 1e-9;
        level &= Math.abs(p.y()) < 1e-9;
        corners.add(p.toString());
      }
      if (inside && !level) {
        facets.add(corners.toString());
      }
    }
    return facets;
  }
}
