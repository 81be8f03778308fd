package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.Edits;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.pipeline.ObjectReshaper.Change;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Reshaper;
import gable.reshaper.GableRoof;
import gable.reshaper.LeadIn;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Mouths are eased, with every proof on. Expected volumes are derived in closed form. */
class LeadInTest {

  private static final double LEG = 0.4;

  /** How much deeper every other chamfer plane starts. */
  private static final double STAGGER = 0.002;

  private static final Affine3 LYING = Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO);

  @ParameterizedTest(name = "{0} facets")
  @ValueSource(ints = {12, 31, 32, 64, 128})
  void bothSquareMouthsLoseAFrustumOfThePolygon(int facets) {
    Mesh before = through(facets, 15).placed(LYING).mesh();

    double removed = before.volume() - eased(before, List.of(new LeadIn())).volume();

    // a polygon moved outwards by t has the area A + P t + t² Σ tan(θ/2); the sum over the depth
    double perimeter = 2 * facets * 4 * Math.sin(Math.PI / facets);
    double corners = facets * Math.tan(Math.PI / facets);
    double mouth = perimeter * LEG * LEG / 2 + corners * LEG * LEG * LEG / 3;
    // planes that start deeper by the stagger take as much more as a strip of that width
    assertThat(removed).isBetween(2 * mouth - 1e-6, 2 * (mouth + perimeter * LEG * STAGGER * 2));
  }

  @Test
  void theChamferFollowsTheRoofThatTheBoreHasJustGot() {
    Mesh before = through(64, 15).placed(LYING).mesh();

    Mesh roofed = eased(before, List.of(new GableRoof()));
    Mesh both = eased(before, List.of(new GableRoof(), new LeadIn()));

    // three quarters of the circle stay, and two flanks as long as the radius; the wall turns by
    // 270 degrees in all (tan of half of each small turn adds up to 0.75 π), the ridge by 90
    double perimeter = 4 * (1.5 * Math.PI) + 2 * 4;
    double corners = Math.tan(Math.PI / 4) + 0.75 * Math.PI;
    double mouth = perimeter * LEG * LEG / 2 + corners * LEG * LEG * LEG / 3;
    // the polygon of 64 sides is shorter than its circle by 0.04 %; the stagger adds to less than
    // every plane 2 δ / c = 1 %
    assertThat(roofed.volume() - both.volume()).isCloseTo(2 * mouth, within(0.011 * 2 * mouth));
  }

  @Test
  void aSlantedMouthIsEasedAllAround() {
    double slope = Math.tan(Math.toRadians(30));
    Mesh before =
        HoleBlock.ofHalfWidth(15)
            .slopes(slope, 0)
            .ring(Ring.slanted(4, 32, 0, 0, slope))
            .ring(Ring.round(4, 32, 0, 20))
            .through()
            .placed(LYING)
            .mesh();

    Result result = ProvedRun.of(before, List.of(new LeadIn()));

    assertThat(change(result).profile()).contains("two mouths");
  }

  @Test
  void aMouthBesideAnEdgeIsLeftWithTheReason() {
    Mesh before = through(32, 5.5).placed(LYING).mesh();

    Change change = change(ProvedRun.of(before, List.of(new LeadIn())));

    assertThat(change.reason().orElseThrow().sentence()).contains("least wall of 1.20 mm");
  }

  @Test
  void aSecondRunLeavesTheMouthsAsTheyAre() {
    Mesh before = through(32, 15).placed(LYING).mesh();
    Mesh once = eased(before, List.of(new GableRoof(), new LeadIn()));

    Result again = ProvedRun.of(once, List.of(new GableRoof(), new LeadIn()));

    assertThat(again.edit().isEmpty()).isTrue();
  }

  private static MeshSketch through(int facets, double half) {
    return HoleBlock.ofHalfWidth(half)
        .ring(Ring.round(4, facets, Math.PI / 2, 0))
        .ring(Ring.round(4, facets, Math.PI / 2, 20))
        .through();
  }

  private static Change change(Result result) {
    return result.features().get(0).changes().get(0);
  }

  private static Mesh eased(Mesh mesh, List<Reshaper> reshapers) {
    Result result = ProvedRun.of(mesh, reshapers);
    assertThat(result.features().get(0).changes())
        .allSatisfy(change -> assertThat(change.reason()).isEmpty());
    Mesh after = Edits.applied(mesh, result.edit());
    assertThat(HalfEdges.of(after).closed()).isTrue();
    return after;
  }
}
