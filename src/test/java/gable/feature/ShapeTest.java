package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lying holes of many sections; expected kinds follow from how the sections are made (derived). */
class ShapeTest {

  /** The block's v is up, its w is +y. */
  private static final Affine3 LYING = Affine3.rows(Vec3.X.times(-1), Vec3.Z, Vec3.Y, Vec3.ZERO);

  private static List<Bore> find(HoleBlock block) {
    Mesh mesh = block.through().placed(LYING).mesh();
    return FeatureFinder.find(mesh, HalfEdges.of(mesh), Tolerances.forModel(mesh.box().reach(), 0))
        .features()
        .stream()
        .map(Bore.class::cast)
        .toList();
  }

  private static List<Bore> find(List<Vec3> section) {
    var ring = new Ring(section);
    return find(HoleBlock.ofHalfWidth(20).ring(ring.at(0)).ring(ring.at(20)));
  }

  private static Vec3 polar(double radius, double degrees) {
    double angle = Math.toRadians(degrees);
    return new Vec3(radius * Math.cos(angle), radius * Math.sin(angle), 0);
  }

  private static List<Vec3> arc(double radius, double from, double to, int steps) {
    return new ArrayList<>(
        IntStream.rangeClosed(0, steps)
            .mapToObj(k -> polar(radius, from + (to - from) * k / steps))
            .toList());
  }

  /** Round below, flanks at 45 degrees that leave tangentially, closed by what is given. */
  private static List<Vec3> roofed(Vec3... top) {
    List<Vec3> section = arc(5, 135, 405, 48);
    section.addAll(List.of(top));
    return section;
  }

  @Test
  void aPeakIsARoofAlready() {
    List<Bore> bores = find(roofed(new Vec3(0, 5 * Math.sqrt(2), 0)));
    assertThat(bores).hasSize(1);
    assertThat(bores.get(0).shape()).isEqualTo(BoreShape.PEAKED);
    assertThat(Math.toDegrees(bores.get(0).coveredAngle())).isCloseTo(270, within(1e-6));
    assertThat(bores.get(0).radius()).isCloseTo(5, within(1e-9));
  }

  @Test
  void aFlatTopIsARoofAlready() {
    double v = 5 * Math.sqrt(2) - 1;
    List<Bore> bores = find(roofed(new Vec3(1, v, 0), new Vec3(-1, v, 0)));
    assertThat(bores).extracting(Bore::shape).containsExactly(BoreShape.PEAKED);
  }

  @Test
  void aRoundedApexIsARoofAlready() {
    List<Vec3> top = new ArrayList<>();
    for (Vec3 p : arc(1, 45, 135, 8)) {
      top.add(p.plus(new Vec3(0, 4 * Math.sqrt(2), 0)));
    }
    List<Bore> bores = find(roofed(top.toArray(Vec3[]::new)));
    assertThat(bores).extracting(Bore::shape).containsExactly(BoreShape.PEAKED);
  }

  @Test
  void aRoofSetOffByMicrometresIsARoofAlready() {
    double off = 0.01;
    List<Vec3> section = arc(5, 135, 405, 48);
    section.add(polar(5 + off, 45));
    section.add(new Vec3(0, (5 + off) * Math.sqrt(2), 0));
    section.add(polar(5 + off, 135));
    assertThat(find(section)).extracting(Bore::shape).containsExactly(BoreShape.PEAKED);
  }

  @Test
  void aPeakThatPointsSidewaysIsNoRoof() {
    List<Vec3> turned =
        roofed(new Vec3(0, 5 * Math.sqrt(2), 0)).stream()
            .map(p -> new Vec3(p.y(), -p.x(), 0))
            .toList();
    assertThat(find(turned)).extracting(Bore::shape).containsExactly(BoreShape.PARTIAL);
  }

  @ParameterizedTest
  @ValueSource(ints = {90, 0, 270, 180})
  void aFlatSideMakesAWallPartial(int way) {
    List<Vec3> section = arc(5, way + 35.0, way + 325.0, 60);
    assertThat(find(section)).extracting(Bore::shape).containsExactly(BoreShape.PARTIAL);
  }

  @Test
  void aKeywayMakesAWallPartialEvenOnTop() {
    List<Vec3> section = arc(5, 105, 435, 60);
    double u = 5 * Math.cos(Math.toRadians(75));
    section.add(new Vec3(u, 6.5, 0));
    section.add(new Vec3(-u, 6.5, 0));
    assertThat(find(section)).extracting(Bore::shape).containsExactly(BoreShape.PARTIAL);
  }

  @Test
  void aSlotWithRoundEndsIsNoBore() {
    List<Vec3> section = new ArrayList<>();
    for (Vec3 p : arc(5, -90, 90, 24)) {
      section.add(p.plus(new Vec3(4, 0, 0)));
    }
    for (Vec3 p : arc(5, 90, 270, 24)) {
      section.add(p.plus(new Vec3(-4, 0, 0)));
    }
    assertThat(find(section)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 6, 7})
  void aPocketOfFewSidesIsNoBore(int sides) {
    assertThat(find(arc(5, 10, 370 - 360.0 / sides, sides - 1))).isEmpty();
  }

  @Test
  void anOvalIsNoBore() {
    List<Vec3> section =
        arc(5, 10, 370 - 5, 71).stream().map(p -> new Vec3(1.02 * p.x(), p.y(), 0)).toList();
    assertThat(find(section)).extracting(Bore::shape).doesNotContain(BoreShape.ROUND);
  }

  @Test
  void aCounterboreIsAStepForOneAndANarrowingForTheOther() {
    List<Bore> bores =
        find(
            HoleBlock.ofHalfWidth(20)
                .ring(Ring.round(3, 32, 0.1, 0))
                .ring(Ring.round(3, 32, 0.1, 12))
                .ring(Ring.round(6, 32, 0.1, 12))
                .ring(Ring.round(6, 32, 0.1, 20)));
    assertThat(bores).extracting(Bore::radius).hasSize(2);
    Bore small = bores.stream().filter(b -> b.radius() < 4).findFirst().orElseThrow();
    Bore large = bores.stream().filter(b -> b.radius() > 4).findFirst().orElseThrow();
    assertThat(small.low().kind()).isEqualTo(EndKind.OPEN_SQUARE);
    assertThat(small.high().kind()).isEqualTo(EndKind.STEP);
    assertThat(large.low().kind()).isEqualTo(EndKind.NARROWING);
    assertThat(large.high().kind()).isEqualTo(EndKind.OPEN_SQUARE);
  }

  @Test
  void conesAndRoundingsAtMouthsAreNamed() {
    HoleBlock block = HoleBlock.ofHalfWidth(20).ring(Ring.round(4.5, 48, 0.1, 0));
    block.ring(Ring.round(4, 48, 0.1, 0.5)).ring(Ring.round(4, 48, 0.1, 18));
    for (int k = 1; k <= 8; k++) {
      double turn = Math.toRadians(90.0 * k / 8);
      block.ring(Ring.round(4 + 2 * (1 - Math.cos(turn)), 48, 0.1, 18 + 2 * Math.sin(turn)));
    }
    List<Bore> bores = find(block);
    assertThat(bores).hasSize(1);
    assertThat(bores.get(0).low().kind()).isEqualTo(EndKind.CHAMFERED);
    assertThat(bores.get(0).low().outerRadius()).isCloseTo(4.5, within(1e-9));
    assertThat(bores.get(0).high().kind()).isEqualTo(EndKind.FILLETED);
    assertThat(bores.get(0).length()).isCloseTo(17.5, within(1e-9));
  }

  @Test
  void aGrooveThatWidensTheMiddleLeavesTwoPiecesInOneGroup() {
    List<Bore> bores =
        find(
            HoleBlock.ofHalfWidth(20)
                .ring(Ring.round(4, 32, 0.1, 0))
                .ring(Ring.round(4, 32, 0.1, 6))
                .ring(Ring.round(9, 32, 0.1, 6))
                .ring(Ring.round(9, 32, 0.1, 14))
                .ring(Ring.round(4, 32, 0.1, 14))
                .ring(Ring.round(4, 32, 0.1, 20)));
    assertThat(bores).hasSize(3);
    assertThat(bores.stream().filter(b -> b.radius() < 5).map(Bore::group).distinct())
        .hasSize(1)
        .doesNotContain(0);
  }
}
