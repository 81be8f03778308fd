package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.Edits;
import gable.fixture.Lathe;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.pipeline.ObjectReshaper.Change;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Limits;
import gable.plan.Reshaper;
import gable.reshaper.TipChamfer;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tips are chamfered, with every proof on. Expected volumes are derived in closed form. */
class TipChamferTest {

  private static final List<Reshaper> TIP = List.of(new TipChamfer());
  private static final Affine3 LYING = Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO);
  private static final Affine3 HANGING =
      Affine3.rows(Vec3.X, new Vec3(0, -1, 0), new Vec3(0, 0, -1), Vec3.ZERO);

  @ParameterizedTest(name = "{0} facets")
  @ValueSource(ints = {10, 12, 31, 32, 64, 128})
  void anUprightTipLosesARingOfThePolygon(int sides) {
    Mesh before = pin(sides, 3, 12).mesh();

    assertThat(removed(before)).isCloseTo(polygonRing(sides, 3, 0.9), within(2e-5));
  }

  @ParameterizedTest(name = "{0} facets")
  @ValueSource(ints = {10, 12, 31, 32, 64, 128})
  void aLyingTipLosesTheSame(int sides) {
    Mesh before = pin(sides, 3, 12).placed(LYING).mesh();

    assertThat(removed(before)).isCloseTo(polygonRing(sides, 3, 0.9), within(2e-5));
  }

  @Test
  void aTipThatHangsFlatIsLeft() {
    Mesh before = pin(32, 3, 12).add(foot()).placed(HANGING).mesh();

    assertThat(code(ProvedRun.of(before, TIP))).isEqualTo("points-down");
  }

  /**
   * A ring of radial and axial width 0.8 at a radius of 3: 5.495693 for the circle, 5.460448 for 32
   * facets whose corners move by it (derived, and checked by quadrature elsewhere). Planes at 45
   * degrees move the sides by it, not the corners: for 32 facets that is 5.484293.
   */
  @Test
  void theClosedFormOfTheseTestsGivesKnownValues() {
    assertThat(ring(4096, 3, 0.8, 0.8, 0)).isCloseTo(5.495693, within(1e-5));
    assertThat(ring(32, 3, 0.8, 0.8 * Math.cos(Math.PI / 32), 0)).isCloseTo(5.460448, within(1e-6));
  }

  /** Legs: 0.15 d within 0.4 and 1.5 mm, at most 0.4 r (estimate, see the class). */
  @ParameterizedTest(name = "radius {0}: leg {1}")
  @CsvSource({"0.5, 0.2", "0.9, 0.36", "1.2, 0.4", "2, 0.6", "3, 0.9", "5, 1.5", "8, 1.5"})
  void theLegGrowsWithThePinWithinBounds(double radius, double leg) {
    Mesh before = pin(48, radius, 8 * radius).mesh();

    // every new point may be off by a step of the grid, 1e-6: that times the area of the end
    double area = Math.PI * radius * radius + 2 * Math.PI * radius * 2 * leg;
    assertThat(removed(before)).isCloseTo(polygonRing(48, radius, leg), within(1e-6 * area));
  }

  @ParameterizedTest(name = "asked for {0}: leg {1}")
  @CsvSource({"0.3, 0.3", "1.1, 1.1", "4, 1.2"})
  void theLegIsWhatIsAskedForWithinTheRadius(double asked, double leg) {
    Limits.Joint usual = Limits.Joint.USUAL;
    Limits.Joint joint =
        new Limits.Joint(
            OptionalDouble.of(asked),
            usual.leadIn(),
            usual.webWidth(),
            usual.clearance(),
            usual.webs());
    Mesh before = pin(48, 3, 24).mesh();

    Result result = ProvedRun.of(before, TIP, Limits.usual().withJoint(joint));

    double volume = before.volume() - Edits.applied(before, result.edit()).volume();
    assertThat(volume).isCloseTo(polygonRing(48, 3, leg), within(1e-4));
  }

  @ParameterizedTest(name = "rising by {0}")
  @ValueSource(doubles = {0.1, 0.3, 0.5, 0.7})
  void aSlantedTipIsChamferedAllAround(double rise) {
    Mesh before =
        Lathe.ofSides(32, 0.1)
            .ring(-3, 8)
            .ring(0, 8)
            .ring(0, 3)
            .ring(12, 3)
            .endingSlanted(rise)
            .sketch()
            .mesh();

    double volume = removed(before);

    // a leg along the wall cuts less where the tip leans away and more where it leans in; their
    // mean is the square one up to the square of the slope (derived)
    assertThat(volume).isCloseTo(polygonRing(32, 3, 0.9), within((0.01 + rise * rise) * volume));
  }

  @Test
  void aSecondRunLeavesTheTipsAsTheyAre() {
    Mesh once = eased(pin(32, 3, 12).placed(LYING).mesh());

    Result again = ProvedRun.of(once, TIP);

    assertThat(again.edit().isEmpty()).isTrue();
    assertThat(code(again)).isEqualTo("eased-already");
  }

  @Test
  void aPinOnThePlateIsLeft() {
    Mesh upsideDown = pin(32, 3, 12).placed(HANGING).mesh();

    assertThat(code(ProvedRun.of(upsideDown, TIP))).isEqualTo("on-plate");
  }

  @Test
  void aShortPinAWideOneAndOneThatIsNotFlatAreLeft() {
    assertThat(code(ProvedRun.of(pin(32, 1.1, 0.76).mesh(), TIP))).isEqualTo("short-pin");
    assertThat(code(ProvedRun.of(pin(64, 10.1, 30).mesh(), TIP))).isEqualTo("above-widest-pin");
    Mesh hollow =
        Lathe.ofSides(32, 0.1)
            .ring(-3, 8)
            .ring(0, 8)
            .ring(0, 3)
            .ring(12, 3)
            .ring(12, 1)
            .ring(11.5, 1)
            .sketch()
            .mesh();
    assertThat(lastCode(ProvedRun.of(hollow, TIP))).isEqualTo("tip-not-flat");
  }

  @Test
  void aPinBesideSomethingIsLeftWithTheReason() {
    Affine3 beside = Affine3.rows(Vec3.X, Vec3.Y, Vec3.Z, new Vec3(20, 0, 0));
    MeshSketch touching = pin(32, 3, 12).add(block(2.98));
    MeshSketch close = pin(32, 3, 12).add(block(3.1));
    MeshSketch apart = pin(32, 3, 12).add(block(3.3));

    assertThat(code(ProvedRun.of(touching.mesh(), TIP))).isEqualTo("touching");
    assertThat(code(ProvedRun.of(close.mesh(), TIP))).isEqualTo("too-close");
    assertThat(change(ProvedRun.of(apart.placed(beside).mesh(), TIP)).profile())
        .contains("chamfered");
  }

  /** How far the planes of a chamfer stand inside the sides of the polygon. */
  private static final double HAIR = 0.0035;

  private static double polygonRing(int sides, double radius, double leg) {
    return ring(sides, radius, leg, leg, HAIR);
  }

  /**
   * Volume of the chamfer of a prism over a regular polygon, a along the axis, c square to the
   * sides, its foot h inside them: the sum over the depth of P s - s² n tan(π/n) for s from h to h
   * + c, where P is the perimeter (derived).
   */
  private static double ring(int sides, double radius, double a, double c, double h) {
    double perimeter = 2 * sides * radius * Math.sin(Math.PI / sides);
    double corners = sides * Math.tan(Math.PI / sides);
    double squares = (h + c) * (h + c) - h * h;
    double cubes = (h + c) * (h + c) * (h + c) - h * h * h;
    return a / c * (perimeter * squares / 2 - corners * cubes / 3);
  }

  private static MeshSketch pin(int sides, double radius, double length) {
    double wide = 2 * radius + 2;
    return Lathe.ofSides(sides, 0.1)
        .ring(-3, wide)
        .ring(0, wide)
        .ring(0, radius)
        .ring(length, radius)
        .sketch();
  }

  /** A block beside the tip, its face at a distance from the axis. */
  private static MeshSketch block(double face) {
    return Lathe.ofSides(4, Math.PI / 4)
        .ring(0, 2 * Math.sqrt(2))
        .ring(6, 2 * Math.sqrt(2))
        .sketch()
        .placed(Affine3.rows(Vec3.X, Vec3.Y, Vec3.Z, new Vec3(face + 2, 0, 8)));
  }

  /** Something that reaches higher than the pin, so that it hangs clear of the plate. */
  private static MeshSketch foot() {
    return Lathe.ofSides(4, 0)
        .ring(0, 1)
        .ring(20, 1)
        .sketch()
        .placed(Affine3.rows(Vec3.X, Vec3.Y, Vec3.Z, new Vec3(30, 0, 0)));
  }

  private static double removed(Mesh before) {
    return before.volume() - eased(before).volume();
  }

  private static Mesh eased(Mesh mesh) {
    Result result = ProvedRun.of(mesh, TIP);
    assertThat(change(result).reason()).isEmpty();
    Mesh after = Edits.applied(mesh, result.edit());
    assertThat(HalfEdges.of(after).closed()).isTrue();
    return after;
  }

  private static Change change(Result result) {
    assertThat(result.features()).hasSize(1);
    return result.features().get(0).changes().get(0);
  }

  private static String lastCode(Result result) {
    int last = result.features().size() - 1;
    return result.features().get(last).changes().get(0).reason().orElseThrow().code();
  }

  private static String code(Result result) {
    return change(result).reason().orElseThrow().code();
  }
}
