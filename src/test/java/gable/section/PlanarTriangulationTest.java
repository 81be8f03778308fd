package gable.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Vec3;
import gable.section.FlatPolygon.Corner;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
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
