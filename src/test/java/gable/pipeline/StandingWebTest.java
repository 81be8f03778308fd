package gable.pipeline;

import static gable.pipeline.WebTrials.GUSSET;
import static gable.pipeline.WebTrials.LYING;
import static gable.pipeline.WebTrials.code;
import static gable.pipeline.WebTrials.joint;
import static gable.pipeline.WebTrials.pin;
import static gable.pipeline.WebTrials.stud;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.Convex;
import gable.fixture.Edits;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Limits;
import gable.plan.Reason;
import gable.plan.Reshaper;
import gable.reshaper.Gusset;
import gable.reshaper.TipChamfer;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pins that have a web already, with every proof on. */
class StandingWebTest {

  @Test
  void aPinWithTipAndWebIsNotChangedAgain() {
    Mesh before = pin(32, 3, 8, 0.1).placed(LYING).mesh();
    List<Reshaper> both = List.of(new TipChamfer(), new Gusset());

    Result first = ProvedRun.of(before, both, Limits.usual(), joint(3, 8));
    Mesh once = Edits.applied(before, first.edit());
    Result again = ProvedRun.of(once, both, Limits.usual(), joint(3, 8));

    assertThat(first.features().get(0).changes())
        .allSatisfy(change -> assertThat(change.reason()).isEmpty());
    assertThat(again.edit().isEmpty()).isTrue();
    assertThat(again.features())
        .singleElement()
        .satisfies(
            pin -> {
              assertThat(pin.feature().length()).isCloseTo(8, within(1e-6));
              assertThat(pin.changes())
                  .extracting(change -> change.reason().orElseThrow().code())
                  .containsExactly(Reason.HAS_WEB, "eased-already");
            });
  }

  /** A rib as wide as the web, but at 30 degrees to the axis where the slot is made for 45. */
  @ParameterizedTest(name = "rib of {0} mm, {1} mm deep at the wall: {2}")
  @CsvSource({
    "0.8, 9, has-web",
    "1.6, 9, other-web",
    "0.8, 14, other-web",
    "0.8, 5, has-web",
  })
  void aRibThatIsThereIsAWebIfItsSlotIsLargeEnough(double width, double deep, String expected) {
    Mesh wall = Convex.mesh(Convex.box(new Vec3(-20, -4, -40), new Vec3(20, 0, 40)));
    List<Plane> rib = Convex.box(new Vec3(-width / 2, -2, -20), new Vec3(width / 2, 8, -2));
    // from 6 mm along the pin's underside to the wall
    Vec3 outward = new Vec3(0, deep - 3, -6).unit();
    rib = new ArrayList<>(rib);
    rib.add(Plane.through(new Vec3(0, 6, -3), outward));
    Mesh before = Convex.with(Convex.with(wall, stud(0)), rib);

    Result result = ProvedRun.of(before, GUSSET, Limits.usual(), joint(3, 8));

    assertThat(result.edit().isEmpty()).isTrue();
    assertThat(code(result)).isEqualTo(expected);
  }
}
