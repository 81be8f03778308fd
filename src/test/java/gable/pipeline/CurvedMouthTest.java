package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.Convex;
import gable.fixture.Edits;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.Lathe;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.pipeline.ObjectReshaper.Change;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Measure;
import gable.plan.Reshaper;
import gable.reshaper.GableRoof;
import gable.reshaper.LeadIn;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Mouths in curved faces are eased, with every proof on. Expected volumes come from an integral
 * over the section of the bore: at each place beside it the height of the face less that of an
 * ideal chamfer, which rises at 45 degrees from a leg below the rim (derived).
 */
class CurvedMouthTest {

  private static final double LEG = 0.4;
  private static final List<Reshaper> EASED = List.of(new LeadIn());

  @ParameterizedTest(name = "bore {0} in a bar of {1}, upright: {2}")
  @CsvSource({
    "2, 5, true",
    "2, 5, false",
    "3, 8, true",
    "3, 8, false",
    "4, 10, true",
    "4, 10, false",
    "4, 25, true",
    "4, 25, false",
    "6, 100, true"
  })
  void aBoreAcrossABarIsEasedAtBothMouths(double bore, double bar, boolean upright) {
    Mesh before = drilled(bar(bar, upright), bar, bore);

    Result result = ProvedRun.of(before, EASED);

    assertThat(only(result).profile()).as("%s", only(result)).contains("two mouths");
    double volume = before.volume() - after(before, result).volume();
    double expected =
        2 * integral(bore, (x, z) -> Math.sqrt(bar * bar - (upright ? x * x : z * z)));
    // planes that start 2 micrometres deeper take 1 % more, chords of a face of 0.05 radians less;
    // the legs differ by up to what the report says
    assertThat(volume).isCloseTo(expected, within(0.04 * expected));
  }

  @ParameterizedTest(name = "bore {0} in a ball of {1}")
  @CsvSource({"2, 6", "4, 10", "4, 20"})
  void aBoreInABallIsEasedAtBothMouths(double bore, double ball) {
    Lathe lathe = Lathe.ofSides(96, 0.01);
    for (int k = 0; k <= 48; k++) {
      double angle = Math.PI * k / 48;
      lathe.ring(-ball * Math.cos(angle), k % 48 == 0 ? 0 : ball * Math.sin(angle));
    }
    Mesh before = drilled(lathe.sketch().mesh(), ball, bore);

    Result result = ProvedRun.of(before, EASED);

    assertThat(only(result).profile()).as("%s", only(result)).contains("two mouths");
    double volume = before.volume() - after(before, result).volume();
    double expected = 2 * integral(bore, (x, z) -> Math.sqrt(ball * ball - x * x - z * z));
    assertThat(volume).isCloseTo(expected, within(0.06 * expected));
  }

  @ParameterizedTest(name = "bore {0} in a bar of {1}, upright: {2}")
  @CsvSource({
    "3, 8, true",
    "3, 8, false",
    "4, 10, true",
    "4, 10, false",
    "4, 25, true",
    "4, 25, false"
  })
  void theChamferFollowsTheRoofThroughACurvedFace(double bore, double bar, boolean upright) {
    Mesh before = drilled(bar(bar, upright), bar, bore);

    Result result = ProvedRun.of(before, List.of(new GableRoof(), new LeadIn()));

    List<Change> changes = result.features().get(0).changes();
    assertThat(changes).allSatisfy(change -> assertThat(change.reason()).isEmpty());
    assertThat(changes.get(1).profile()).contains("two mouths");
    Mesh once = after(before, result);
    Result again = ProvedRun.of(once, List.of(new GableRoof(), new LeadIn()));
    assertThat(again.edit().isEmpty()).isTrue();
    for (Measure measure : changes.get(1).measures()) {
      if (measure.name().equals("most-leg")) {
        assertThat(measure.value()).isLessThan(2 * LEG);
      }
    }
  }

  @Test
  void ofAPipeTheOuterMouthIsEasedAndTheInnerOneLeft() {
    Mesh pipe = Convex.without(bar(12, true), Convex.prism(z(-40), z(40), 7, 128, 0.01));
    Mesh before = Convex.without(pipe, Convex.prism(Vec3.ZERO, new Vec3(0, 20, 0), 2.5, 48, 0.03));

    Result result = ProvedRun.of(before, EASED);

    assertThat(result.features())
        .filteredOn(feature -> Math.abs(feature.feature().radius() - 2.5) < 0.1)
        .hasSize(1)
        .allSatisfy(
            feature -> assertThat(feature.changes().get(0).profile()).contains("one mouth"));
    assertThat(HalfEdges.of(after(before, result)).closed()).isTrue();
  }

  @Test
  void aMouthBesideAnEdgeOrAThinWallIsLeft() {
    // the bar ends 0.3 mm above the bore, and is 0.9 mm away from a cavity beside the mouth
    Mesh high = Convex.mesh(Convex.prism(z(-20), z(4.3), 12, 256, 0.003));
    assertThat(only(ProvedRun.of(drilled(high, 12, 4), EASED)).reason().orElseThrow().sentence())
        .containsAnyOf("edge", "least wall");
    Mesh thin =
        Convex.without(
            bar(12, true), Convex.prism(new Vec3(5.6, -20, 0), new Vec3(5.6, 20, 0), 0.8, 24, 0.1));
    Result result = ProvedRun.of(drilled(thin, 12, 4), EASED);
    assertThat(result.features())
        .filteredOn(feature -> feature.feature().radius() > 3)
        .allSatisfy(
            feature ->
                assertThat(feature.changes().get(0).reason().orElseThrow().sentence())
                    .contains("least wall"));
  }

  @Test
  void aMouthAsWideAsTheBarIsLeftWithTheReason() {
    Mesh before = drilled(bar(4.2, true), 5, 4);

    assertThat(ProvedRun.of(before, EASED).features())
        .allSatisfy(feature -> assertThat(feature.changes().get(0).reason()).isPresent());
  }

  @Test
  void anUprightBoreIsEasedToo() {
    Mesh before =
        HoleBlock.ofHalfWidth(15)
            .ring(Ring.round(4, 32, 0.1, 0))
            .ring(Ring.round(4, 32, 0.1, 20))
            .through()
            .mesh();

    assertThat(only(ProvedRun.of(before, EASED)).profile()).contains("two mouths");
  }

  private static Vec3 z(double height) {
    return new Vec3(0, 0, height);
  }

  private static Mesh bar(double radius, boolean upright) {
    Vec3 half = upright ? new Vec3(0, 0, 20) : new Vec3(20, 0, 0);
    return Convex.mesh(Convex.prism(half.times(-1), half, radius, 256, 0.003));
  }

  private static Mesh drilled(Mesh part, double reach, double radius) {
    List<Plane> drill =
        Convex.prism(new Vec3(0, -2 * reach, 0), new Vec3(0, 2 * reach, 0), radius, 48, 0.05);
    return Convex.without(part, drill);
  }

  /** What an ideal chamfer takes from a face over the (x, z) plane around a bore of 48 sides. */
  private static double integral(double bore, DoubleBinaryOperator face) {
    double sum = 0;
    int turns = 480;
    int steps = 200;
    for (int k = 0; k < turns; k++) {
      double angle = 2 * Math.PI * (k + 0.5) / turns;
      double wall =
          bore * Math.cos(Math.PI / 48) / Math.cos(Math.IEEEremainder(angle, Math.PI / 24));
      double foot = face.applyAsDouble(wall * Math.cos(angle), wall * Math.sin(angle)) - LEG;
      double width = 1.2 * LEG;
      for (int i = 0; i < steps; i++) {
        double at = wall + width * (i + 0.5) / steps;
        double height = face.applyAsDouble(at * Math.cos(angle), at * Math.sin(angle));
        double over = height - foot - (at - wall);
        sum += Math.max(0, over) * at * (2 * Math.PI / turns) * (width / steps);
      }
    }
    return sum;
  }

  private static Mesh after(Mesh before, Result result) {
    Mesh after = Edits.applied(before, result.edit());
    assertThat(HalfEdges.of(after).closed()).isTrue();
    return after;
  }

  private static Change only(Result result) {
    assertThat(result.features()).hasSize(1);
    return result.features().get(0).changes().get(0);
  }
}
