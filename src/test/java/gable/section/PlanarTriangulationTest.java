package gable.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Vec3;
import gable.section.FlatPolygon.Corner;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlanarTriangulationTest {

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void coversARandomStarWithAHoleInAnyPlane(long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 50; round++) {
      Vec3 normal =
          new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      List<Corner> outer = star(random, 0, 3 + random.nextInt(40), 5, normal);
      List<Corner> hole = star(random, 1000, 3 + random.nextInt(10), 0.4, normal.times(-1));
      FlatPolygon polygon = new FlatPolygon(normal, outer, List.of(hole));
      int[] corners = PlanarTriangulation.of(polygon).orElseThrow();
      assertThat(corners).hasSize(3 * (outer.size() + hole.size()));
      double area = FlatPolygon.area(outer, normal) + FlatPolygon.area(hole, normal);
      assertThat(sum(corners, outer, hole, normal)).isCloseTo(area, within(1e-9 * area));
    }
  }

  @Test
  void givesCloseCornersOfOneLineTheFarCorner() {
    // three corners on a line, 2e-4 apart, the middle one pushed out by the rounding of 1e-7
    List<Corner> ring =
        List.of(
            new Corner(0, new Vec3(0, 0, 0)),
            new Corner(1, new Vec3(1, 0, 0)),
            new Corner(2, new Vec3(1.0002, -1e-7, 0)),
            new Corner(3, new Vec3(1.0004, 0, 0)),
            new Corner(4, new Vec3(2, 0, 0)),
            new Corner(5, new Vec3(1, 3, 0)));
    int[] corners = PlanarTriangulation.of(new FlatPolygon(Vec3.Z, ring, List.of())).orElseThrow();
    for (int k = 0; k < corners.length; k += 3) {
      Vec3 a = ring.get(corners[k]).point();
      Vec3 b = ring.get(corners[k + 1]).point();
      Vec3 c = ring.get(corners[k + 2]).point();
      double longest = Math.max(a.distance(b), Math.max(b.distance(c), c.distance(a)));
      assertThat(b.minus(a).cross(c.minus(a)).z() / longest).isGreaterThan(1e-5);
    }
  }

  @Test
  void hasNoResultForARingThatCrossesItself() {
    List<Corner> bow =
        List.of(
            new Corner(0, new Vec3(0, 0, 0)),
            new Corner(1, new Vec3(2, 2, 0)),
            new Corner(2, new Vec3(2, 0, 0)),
            new Corner(3, new Vec3(0, 2, 0)));
    assertThat(PlanarTriangulation.of(new FlatPolygon(Vec3.Z, bow, List.of())))
        .isEqualTo(Optional.empty());
  }

  /**
   * A rectangle in an upright plane, with corners at equal distances along its sides: wherever four
   * of them lie on one circle both diagonals are equally good (from Delaunay's rule).
   */
  private static List<Vec3> grid() {
    List<Vec3> ring = new ArrayList<>();
    for (int k = 0; k < 12; k++) {
      double along = k % 3;
      ring.add(
          switch (k / 3) {
            case 0 -> new Vec3(along, 0, 0);
            case 1 -> new Vec3(3, 0, along);
            case 2 -> new Vec3(3 - along, 0, 3);
            default -> new Vec3(0, 0, 3 - along);
          });
    }
    return ring;
  }

  /** Triangles as sets of corner numbers. */
  private static Set<Set<Integer>> triangles(List<Corner> ring, Vec3 normal) {
    int[] corners = PlanarTriangulation.of(new FlatPolygon(normal, ring, List.of())).orElseThrow();
    Set<Set<Integer>> sets = new HashSet<>();
    for (int k = 0; k < corners.length; k += 3) {
      sets.add(Set.of(corners[k], corners[k + 1], corners[k + 2]));
    }
    return sets;
  }

  /** Corner k of the ring gets number k, whatever place in the list it has. */
  private static List<Corner> numbered(List<Vec3> points, int start) {
    List<Corner> ring = new ArrayList<>();
    for (int k = 0; k < points.size(); k++) {
      int id = (start + k) % points.size();
      ring.add(new Corner(id, points.get(id)));
    }
    return ring;
  }

  @Test
  void choosesEqualDiagonalsWhateverCornerTheRingStartsWith() {
    for (Vec3 normal : new Vec3[] {Vec3.Y.times(-1), Vec3.Z}) {
      List<Vec3> points =
          grid().stream().map(p -> normal.z() > 0 ? new Vec3(p.x(), p.z(), 0) : p).toList();
      Set<Set<Integer>> first = triangles(numbered(points, 0), normal);
      for (int start = 1; start < points.size(); start++) {
        assertThat(triangles(numbered(points, start), normal)).isEqualTo(first);
      }
    }
  }

  @Test
  void choosesTheSameDiagonalsWhenThePlaneIsTurnedAboutTheUpright() {
    Set<Set<Integer>> first = triangles(numbered(grid(), 0), Vec3.Y.times(-1));
    for (double angle = 0.1; angle < 6.3; angle += 0.31) {
      double c = Math.cos(angle);
      double s = Math.sin(angle);
      // written with six decimals, so that no four corners lie on one circle exactly
      List<Vec3> turned =
          grid().stream()
              .map(p -> new Vec3(written(c * p.x() + 40), written(s * p.x() - 7), written(p.z())))
              .toList();
      assertThat(triangles(numbered(turned, 5), new Vec3(s, -c, 0))).isEqualTo(first);
    }
  }

  private static double written(double x) {
    return Math.rint(x * 1e6) / 1e6;
  }

  /**
   * In a projection along x or y a face at 40 degrees to both axes is narrowed to 0.77 or 0.64, and
   * another diagonal is the better one than in the face itself.
   */
  @Test
  void goesByTheAnglesInThePlaneAndNotInAProjection() {
    // a rhombus: the shorter diagonal is Delaunay's, since the angles at its ends are the wider
    double c = Math.cos(Math.toRadians(40));
    double s = Math.sin(Math.toRadians(40));
    List<Vec3> points = new ArrayList<>();
    for (double[] p : new double[][] {{0, -1.2}, {1, 0}, {0, 1.2}, {-1, 0}}) {
      points.add(new Vec3(c * p[0], s * p[0], p[1]));
    }
    assertThat(triangles(numbered(points, 0), new Vec3(s, -c, 0)))
        .isEqualTo(Set.of(Set.of(0, 1, 3), Set.of(1, 2, 3)));
    // 1.8 high and 2 wide, but 1.53 in projection
    List<Vec3> flatter = new ArrayList<>();
    for (double[] p : new double[][] {{0, -0.9}, {1, 0}, {0, 0.9}, {-1, 0}}) {
      flatter.add(new Vec3(c * p[0], s * p[0], p[1]));
    }
    assertThat(triangles(numbered(flatter, 0), new Vec3(s, -c, 0)))
        .isEqualTo(Set.of(Set.of(0, 1, 2), Set.of(0, 2, 3)));
  }

  private static double sum(int[] corners, List<Corner> outer, List<Corner> hole, Vec3 normal) {
    double sum = 0;
    for (int k = 0; k < corners.length; k += 3) {
      Vec3 a = find(corners[k], outer, hole);
      Vec3 b = find(corners[k + 1], outer, hole);
      Vec3 c = find(corners[k + 2], outer, hole);
      double area = b.minus(a).cross(c.minus(a)).dot(normal);
      assertThat(area).isPositive();
      sum += area;
    }
    return sum;
  }

  private static Vec3 find(int id, List<Corner> outer, List<Corner> hole) {
    return id < 1000 ? outer.get(id).point() : hole.get(id - 1000).point();
  }

  /** A ring about the origin whose corners lie at any distance from half the radius on. */
  private static List<Corner> star(
      Random random, int first, int count, double radius, Vec3 normal) {
    Vec3 u = normal.anySquare();
    Vec3 v = normal.cross(u);
    List<Corner> ring = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      double angle = 2 * Math.PI * k / count;
      double distance = radius * (0.5 + 0.5 * random.nextDouble());
      Vec3 p = u.times(distance * Math.cos(angle)).plus(v.times(distance * Math.sin(angle)));
      ring.add(new Corner(first + k, p));
    }
    return ring;
  }
}
