package gable.pipeline;

import static gable.pipeline.WebTrials.DOWN;
import static gable.pipeline.WebTrials.GUSSET;
import static gable.pipeline.WebTrials.LYING;
import static gable.pipeline.WebTrials.change;
import static gable.pipeline.WebTrials.code;
import static gable.pipeline.WebTrials.joint;
import static gable.pipeline.WebTrials.pin;
import static gable.pipeline.WebTrials.socket;
import static gable.pipeline.WebTrials.stud;
import static gable.pipeline.WebTrials.webbed;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.feature.Partner;
import gable.fixture.Convex;
import gable.fixture.Edits;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.pipeline.ObjectReshaper.Change;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Limits;
import gable.plan.Limits.Joint.Webs;
import gable.plan.Measure;
import gable.plan.Reason;
import gable.plan.Reshaper;
import gable.reshaper.GableRoof;
import gable.reshaper.Gusset;
import gable.reshaper.LeadIn;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Webs and slots, with every proof on. Expected volumes are derived in closed form. */
class GussetTest {

  /** Legs of tips, see the class of tips, and what stays free before them. */
  private static double end(double radius, double length) {
    double leg = Math.min(Math.max(0.4, Math.min(1.5, 0.3 * radius)), 0.4 * radius);
    return length - leg - 0.25;
  }

  @ParameterizedTest(name = "{0} facets, radius {1}, length {2}, turned {3}")
  @CsvSource({
    "10, 3, 12, 0",
    "12, 3, 12, 0.1",
    "31, 3, 12, 0.2",
    "32, 3, 12, 0",
    "64, 2, 10, 0.05",
    "128, 5, 9, 0.3",
    "24, 1, 5, 0",
    "48, 8, 30, 0.01"
  })
  void aPinGetsAWebOfTheVolumeOfAWedgeLessThePin(
      int sides, double radius, double length, double phase) {
    Mesh before = pin(sides, radius, length, phase).placed(LYING).mesh();

    double added = webbed(before, joint(radius, length)).volume() - before.volume();

    double expected = wedge(sides, phase, radius, end(radius, length) + radius, 0.4);
    assertThat(added).isCloseTo(expected, within(2e-4));
  }

  @ParameterizedTest(name = "{0} facets, radius {1}, pin {2} long, turned {3}")
  @CsvSource({
    "12, 3, 6, 0.1",
    "24, 3, 6, 0",
    "31, 3, 6, 0.2",
    "32, 2, 5, 0.05",
    "64, 4, 8, 0",
    "128, 5, 9, 0.3"
  })
  void aBlindBoreLosesTheSameWedgeGrownByTheClearance(
      int sides, double radius, double length, double phase) {
    double pin = radius * Math.cos(Math.PI / sides) - 0.1;
    Mesh before = blind(sides, radius, length + 2, phase).placed(LYING).mesh();

    double removed = before.volume() - slotted(before, pin, length, DOWN).volume();

    double reach = end(pin, length) + pin + 0.2 * Math.sqrt(2);
    assertThat(removed).isCloseTo(wedge(sides, phase, radius, reach, 0.6), within(2e-4));
  }

  @ParameterizedTest(name = "{0} facets, radius {1}, pin {2} long, turned {3}")
  @CsvSource({"12, 3, 6, 0.1", "24, 3, 6, 0", "31, 3, 6, 0.2", "64, 4, 8, 0", "128, 5, 9, 0.3"})
  void aThroughBoreLosesTheSlotOverItsWholeLength(
      int sides, double radius, double length, double phase) {
    double pin = radius * Math.cos(Math.PI / sides) - 0.1;
    Mesh before =
        HoleBlock.ofHalfWidth(40)
            .ring(Ring.round(radius, sides, phase, 0))
            .ring(Ring.round(radius, sides, phase, 20))
            .through()
            .placed(LYING)
            .mesh();

    double removed = before.volume() - slotted(before, pin, length, DOWN).volume();

    double floor = end(pin, length) + pin + 0.2 * Math.sqrt(2);
    assertThat(removed).isCloseTo(20 * area(sides, phase, radius, floor, 0.6), within(2e-4));
  }

  /** One of the sides of a polygon that faces down, cut to a width. */
  private interface Strip {
    double over(double width, double[] depths);
  }

  /**
   * Volume between the underside, the wall and a prism over a regular polygon: at u across the
   * prism its surface is p(u) below the axis and the underside meets it at x = reach - p(u); what
   * is below is a triangle with both legs x at 45 degrees. So the volume is the integral of x² / 2
   * over u (derived).
   */
  private static double wedge(int sides, double phase, double radius, double reach, double half) {
    return strips(
        sides,
        phase,
        radius,
        half,
        (width, p) -> {
          double a = reach - p[0];
          double b = reach - p[1];
          double c = reach - p[2];
          return width / 6 * (a * a + 4 * b * b + c * c) / 2;
        });
  }

  /** Area between the surface of the prism and a level floor. */
  private static double area(int sides, double phase, double radius, double floor, double half) {
    return strips(sides, phase, radius, half, (width, p) -> width * (floor - p[1]));
  }

  /** Sums over the sides by Simpson's rule, which is exact for squares. */
  private static double strips(int sides, double phase, double radius, double half, Strip strip) {
    double sum = 0;
    for (int k = 0; k < sides; k++) {
      double a = phase + 2 * Math.PI * k / sides;
      double b = phase + 2 * Math.PI * (k + 1) / sides;
      double ua = radius * Math.cos(a);
      double ub = radius * Math.cos(b);
      double pa = -radius * Math.sin(a);
      double pb = -radius * Math.sin(b);
      double from = Math.max(-half, Math.min(ua, ub));
      double to = Math.min(half, Math.max(ua, ub));
      if (pa + pb > 0 && from < to) {
        double[] depths = new double[3];
        for (int i = 0; i < 3; i++) {
          double u = from + (to - from) * i / 2;
          depths[i] = pa + (pb - pa) * (u - ua) / (ub - ua);
        }
        sum += strip.over(to - from, depths);
      }
    }
    return sum;
  }

  @Test
  void websOnBothSidesAndTheSlotsForThem() {
    Limits both = limits(Webs.BOTH);
    Mesh pin = pin(32, 3, 8, 0.1).placed(LYING).mesh();
    Mesh bore = blind(32, 3.2, 10, 0.1).placed(LYING).mesh();

    Result webs = ProvedRun.of(pin, GUSSET, both, joint(3, 8));
    Result slots = ProvedRun.of(bore, GUSSET, both, socket(3, 8, DOWN));

    assertThat(change(webs).profile()).contains("lower-and-upper");
    assertThat(change(slots).profile()).contains("two-slots");
    double end = end(3, 8);
    double up = wedge(32, -0.1, 3, end + 3, 0.4) + wedge(32, 0.1, 3, end + 3, 0.4);
    assertThat(Edits.applied(pin, webs.edit()).volume() - pin.volume()).isCloseTo(up, within(4e-4));
  }

  @Test
  void aBoreWithRoofLeadInAndSlotIsMadeInThisOrderAndItsClearanceTold() {
    Mesh bore = blind(32, 3.2, 10, 0.1).placed(LYING).mesh();
    for (Vec3 direction : List.of(DOWN, Vec3.Z)) {
      Result result =
          ProvedRun.of(
              bore,
              List.of(new Gusset(), new LeadIn(), new GableRoof()),
              Limits.usual(),
              socket(3, 8, direction));

      List<Change> changes = result.features().get(0).changes();
      assertThat(changes).extracting(Change::by).containsExactly("roof", "lead-in", "gusset");
      assertThat(changes).allSatisfy(change -> assertThat(change.reason()).isEmpty());
      // beside the slot the pin has the clearance; around it, that to the polygon of the bore
      double round = 3.2 * Math.cos(Math.PI / 32) - 3;
      assertThat(measure(changes.get(2), "least-clearance"))
          .isCloseTo(Math.min(0.2, round), within(1e-3));
      Mesh after = Edits.applied(bore, result.edit());
      assertThat(HalfEdges.of(after).closed()).isTrue();
      Result again =
          ProvedRun.of(
              after,
              List.of(new Gusset(), new LeadIn(), new GableRoof()),
              Limits.usual(),
              socket(3, 8, direction));
      assertThat(again.edit().isEmpty()).isTrue();
    }
  }

  /** As wide as lugs allow: each piece is slotted as if the web began there. */
  @Test
  void bothLugsOfABoreAreSlotted() {
    List<Reshaper> all = List.of(new Gusset());
    Mesh lugs = lugs(3.2, 30);
    Map<String, Partner> partners = new HashMap<>(socket(3, 20, DOWN));
    partners.put("B2", new Partner("pin", 3, 20, Optional.of(DOWN)));

    Result result = ProvedRun.of(lugs, all, Limits.usual(), partners);

    assertThat(result.features()).hasSize(2);
    assertThat(webs(result)).allSatisfy(change -> assertThat(change.profile()).contains("slot"));
  }

  @ParameterizedTest(name = "the wall leans by {0}")
  @ValueSource(doubles = {-0.5, -0.3, 0.3, 0.7})
  void theWebIsRootedInAWallThatLeans(double lean) {
    List<Plane> body = new ArrayList<>(Convex.box(new Vec3(-20, -40, -40), new Vec3(20, 40, 40)));
    Vec3 normal = new Vec3(0, Math.cos(lean), Math.sin(lean));
    body.add(Plane.through(Vec3.ZERO, normal));
    Mesh before = Convex.with(Convex.mesh(body), stud(0));

    Result result = ProvedRun.of(before, GUSSET, Limits.usual(), joint(3, 8));

    assertThat(change(result).reason()).isEmpty();
    Mesh after = Edits.applied(before, result.edit());
    Result again = ProvedRun.of(after, GUSSET, Limits.usual(), joint(3, 8));
    assertThat(code(again)).isEqualTo(Reason.HAS_WEB);
    // the slot may lack a tenth of its clearance before it is made again
    assertThat(again.features().get(0).feature().length())
        .isCloseTo(result.features().get(0).feature().length(), within(0.02));
  }

  @ParameterizedTest(name = "radius {0}, upright {1}")
  @CsvSource({"8, true", "15, true", "40, true", "40, false"})
  void theWebIsRootedInAWallThatIsRound(double radius, boolean upright) {
    Vec3 half = upright ? new Vec3(0, 0, 45) : new Vec3(45, 0, 0);
    Vec3 middle = new Vec3(0, -radius, 0);
    Mesh bar = Convex.mesh(Convex.prism(middle.minus(half), middle.plus(half), radius, 256, 0.003));
    Mesh before = Convex.with(bar, stud(0));

    Result result = ProvedRun.of(before, GUSSET, Limits.usual(), joint(3, 8));

    assertThat(webs(result)).allSatisfy(change -> assertThat(change.reason()).isEmpty());
    assertThat(webs(result)).isNotEmpty();
  }

  /** A line at 45 degrees from the pin's tip passes below a bar of 15 (derived: 17.6 away). */
  @Test
  void aWebThatWouldMissTheWallIsLeft() {
    Vec3 half = new Vec3(45, 0, 0);
    Vec3 middle = new Vec3(0, -15, 0);
    Mesh bar = Convex.mesh(Convex.prism(middle.minus(half), middle.plus(half), 15, 256, 0.003));
    Mesh edge = Convex.mesh(Convex.box(new Vec3(-20, -4, -6), new Vec3(20, 0, 20)));
    Mesh foot = Convex.mesh(Convex.box(new Vec3(50, 0, -20), new Vec3(60, 10, 0)));

    for (Mesh wall : List.of(bar, Convex.beside(edge, foot))) {
      Mesh before = Convex.with(wall, stud(0));
      Result result = ProvedRun.of(before, GUSSET, Limits.usual(), joint(3, 8));
      assertThat(webs(result))
          .extracting(change -> change.reason().map(Reason::code).orElse(""))
          .contains("no-wall");
    }
  }

  private static List<Change> webs(Result result) {
    return result.features().stream().flatMap(f -> f.changes().stream()).toList();
  }

  @Test
  void pinsThatNeedOrBearNoWebAreLeftWithTheReason() {
    Mesh lying = pin(32, 3, 8, 0.1).placed(LYING).mesh();
    assertThat(code(ProvedRun.of(lying, GUSSET))).isEqualTo("not-paired");
    Map<String, Partner> blocked = Map.of("P1", new Partner("bore", 3.1, 9, Optional.empty()));
    assertThat(code(ProvedRun.of(lying, GUSSET, Limits.usual(), blocked))).isEqualTo("no-slot");
    Mesh upright = pin(32, 3, 8, 0.1).mesh();
    assertThat(code(ProvedRun.of(upright, GUSSET, Limits.usual(), joint(3, 8))))
        .isEqualTo("steep-enough");
    Mesh low = onLowWall(3.0);
    assertThat(code(ProvedRun.of(low, GUSSET, Limits.usual(), joint(3, 8)))).isEqualTo("on-plate");
    Mesh thin = pin(32, 0.5, 5, 0.1).placed(LYING).mesh();
    assertThat(code(ProvedRun.of(thin, GUSSET, Limits.usual(), joint(0.5, 5))))
        .isEqualTo("web-too-thick");
  }

  @Test
  void aWebThatReachesThePlateStandsOnIt() {
    Mesh before = onLowWall(6);

    Mesh after = webbed(before, joint(3, 8));

    assertThat(after.box().min().z()).isEqualTo(before.box().min().z());
    assertThat(after.volume()).isGreaterThan(before.volume() + 1);
  }

  @Test
  void aPinAboveAnotherIsLeftWhereItsWebWouldMeetIt() {
    Mesh wall = Convex.mesh(Convex.box(new Vec3(-20, -4, -40), new Vec3(20, 0, 40)));
    Mesh two = Convex.with(Convex.with(wall, stud(0)), stud(-9));
    Map<String, Partner> partners = new HashMap<>(joint(3, 8));
    partners.put("P2", new Partner("bore", 3.1, 9, Optional.of(DOWN)));

    Result result = ProvedRun.of(two, GUSSET, Limits.usual(), partners);

    assertThat(webs(result))
        .extracting(change -> change.reason().map(Reason::code).orElse("web"))
        .containsExactlyInAnyOrder("touching", "web");
  }

  @Test
  void aSlotThatWouldThinAWallIsLeft() {
    for (double half : new double[] {9.5, 10.5}) {
      Mesh thin =
          HoleBlock.ofHalfWidth(half)
              .ring(Ring.round(3.2, 32, 0.1, 0))
              .ring(Ring.round(3.2, 32, 0.1, 10))
              .blind(14)
              .placed(LYING)
              .mesh();
      assertThat(code(ProvedRun.of(thin, GUSSET, Limits.usual(), socket(3, 8, DOWN))))
          .isEqualTo("thin-wall");
    }
  }

  /** Two plates of 6 mm with a gap of 8 mm between them on one foot, and one bore through both. */
  private static Mesh lugs(double radius, double half) {
    List<Mesh> plates = new ArrayList<>();
    for (double from : new double[] {0, 14}) {
      plates.add(
          HoleBlock.ofHalfWidth(half)
              .ring(Ring.round(radius, 32, 0.1, from))
              .ring(Ring.round(radius, 32, 0.1, from + 6))
              .through()
              .placed(LYING)
              .mesh());
    }
    return Convex.beside(plates.get(0), plates.get(1));
  }

  private static MeshSketch blind(int sides, double radius, double depth, double phase) {
    return HoleBlock.ofHalfWidth(40)
        .ring(Ring.round(radius, sides, phase, 0))
        .ring(Ring.round(radius, sides, phase, depth))
        .blind(depth + 10);
  }

  private static Mesh slotted(Mesh mesh, double radius, double length, Vec3 web) {
    Result result = ProvedRun.of(mesh, GUSSET, Limits.usual(), socket(radius, length, web));
    assertThat(change(result).reason()).isEmpty();
    Mesh after = Edits.applied(mesh, result.edit());
    assertThat(HalfEdges.of(after).closed()).isTrue();
    return after;
  }

  private static Limits limits(Webs webs) {
    Limits.Joint usual = Limits.Joint.USUAL;
    return Limits.usual()
        .withJoint(
            new Limits.Joint(
                OptionalDouble.empty(), usual.leadIn(), usual.webWidth(), usual.clearance(), webs));
  }

  private static double measure(Change change, String name) {
    return change.measures().stream()
        .filter(measure -> measure.name().equals(name))
        .mapToDouble(Measure::value)
        .findFirst()
        .orElseThrow();
  }

  /** A pin along y, 3 wide in radius and 8 long, on a wall whose lower edge is below the axis. */
  private static Mesh onLowWall(double below) {
    Mesh wall = Convex.mesh(Convex.box(new Vec3(-20, -4, -below), new Vec3(20, 0, 20)));
    return Convex.with(wall, stud(0));
  }
}
