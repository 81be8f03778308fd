package gable.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gable.section.RoofProfile.Point;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Closed forms for peaked roofs over regular polygons; derived, and re-derived by quadrature. */
class RoofProfileTest {

  @ParameterizedTest(name = "{0} facets, vertex on top: apex {1}")
  @CsvSource({"8,1.414214", "12,1.366025", "16,1.414214", "24,1.414214", "128,1.414214"})
  void supportsThePolygonNotTheCircle(int facets, double apex) {
    RoofProfile roof = RoofProfile.over(polygon(facets, 1, 0), Math.PI / 4, 1e-9);
    assertThat(roof.ridge().v()).isCloseTo(apex, within(1e-6));
    assertThat(roof.ridge().u()).isCloseTo(0, within(1e-12));
  }

  @Test
  void findsContactsOfAnUnevenPhase() {
    // derived: n 24, R 4, turned by 3 degrees
    RoofProfile roof = RoofProfile.over(polygon(24, 4, Math.toRadians(3)), Math.PI / 4, 1e-9);
    assertThat(roof.ridge().v()).isCloseTo(5.649102, within(1e-6));
    assertThat(roof.right().u()).isCloseTo(2.972579, within(1e-6));
    assertThat(roof.right().v()).isCloseTo(2.676522, within(1e-6));
    assertThat(roof.left().u()).isCloseTo(-2.676522, within(1e-6));
    assertThat(roof.left().v()).isCloseTo(2.972579, within(1e-6));
    assertThat(areaAdded(24, 4, Math.toRadians(3), roof)).isCloseTo(3.532861, within(1e-6));
  }

  @ParameterizedTest(name = "slope {0}: apex {1}")
  @CsvSource({"30,1.154701", "35,1.220775", "40,1.305407", "50,1.555724", "55,1.743447", "60,2.0"})
  void meetsTheCircleFormulaForManyFacets(double slopeDeg, double apex) {
    RoofProfile roof = RoofProfile.over(polygon(7200, 1, 0), Math.toRadians(slopeDeg), 1e-12);
    // the support of an n-gon misses the circle's by at most 1 - cos(pi/n), here 1e-7
    assertThat(roof.ridge().v()).isCloseTo(apex, within(1e-6));
  }

  @ParameterizedTest(name = "bridge {0}: flat at {1}")
  @CsvSource({"0.8,5.256854", "1.2,5.056854", "2.0,4.656854", "3.0,4.156854"})
  void lowersTheTopByAFlat(double bridge, double top) {
    RoofProfile roof = RoofProfile.over(polygon(7200, 4, 0), Math.PI / 4, 1e-12);
    assertThat(roof.withBridge(bridge).top()).isCloseTo(top, within(1e-6));
  }

  @Test
  void refusesAFlatThatWouldCutIntoTheHole() {
    // derived: widest flat is 2 r tan(s/2) = 3.313708 for d 8, s 45
    RoofProfile roof = RoofProfile.over(polygon(7200, 4, 0), Math.PI / 4, 1e-12);
    assertThat(roof.widestBridge(4)).isCloseTo(3.313708, within(1e-5));
    assertThat(roof.withBridge(3.32).top()).isLessThan(4);
  }

  @Test
  void refusesAnglesThatAreNoRoof() {
    assertThatThrownBy(() -> RoofProfile.over(polygon(12, 1, 0), Double.NaN, 1e-9))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> RoofProfile.over(polygon(12, 1, 0), Math.PI / 2, 1e-9))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Shoelace over the contacts, the ridge and the chain of corners between the contacts. */
  private static double areaAdded(int facets, double radius, double phase, RoofProfile roof) {
    List<Point> ring = new ArrayList<>(List.of(roof.ridge()));
    polygon(facets, radius, phase).stream()
        .filter(p -> p.v() >= Math.min(roof.left().v(), roof.right().v()) - 1e-9)
        .sorted((a, b) -> Double.compare(a.u(), b.u()))
        .forEach(ring::add);
    double sum = 0;
    for (int k = 0; k < ring.size(); k++) {
      Point p = ring.get(k);
      Point q = ring.get((k + 1) % ring.size());
      sum += p.u() * q.v() - p.v() * q.u();
    }
    return Math.abs(sum) / 2;
  }

  private static List<Point> polygon(int facets, double radius, double phase) {
    List<Point> points = new ArrayList<>();
    for (int k = 0; k < facets; k++) {
      double a = phase + 2 * Math.PI * k / facets;
      points.add(new Point(radius * Math.sin(a), radius * Math.cos(a)));
    }
    return points;
  }
}
