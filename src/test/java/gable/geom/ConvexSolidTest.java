package gable.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ConvexSolidTest {

  @Test
  void cutsATetrahedronOutOfACorner() {
    Vec3 slant = new Vec3(1, 1, 1).unit();
    ConvexSolid solid =
        ConvexSolid.of(
            List.of(
                new Plane(new Vec3(-1, 0, 0), 0),
                new Plane(new Vec3(0, -1, 0), 0),
                new Plane(new Vec3(0, 0, -1), 0),
                Plane.through(Vec3.X, slant)),
            Vec3.ZERO,
            10);
    assertThat(solid.bounded()).isTrue();
    assertThat(solid.volume()).isCloseTo(1.0 / 6, within(1e-14));
    assertThat(solid.edges()).hasSize(6);
  }

  @Test
  void saysWhenPlanesBoundNothing() {
    List<Plane> open = List.of(new Plane(Vec3.X, 1), new Plane(Vec3.Y, 1));
    assertThat(ConvexSolid.of(open, Vec3.ZERO, 10).bounded()).isFalse();
    List<Plane> empty = List.of(new Plane(Vec3.X, -1), new Plane(Vec3.X.times(-1), -1));
    assertThat(ConvexSolid.of(empty, Vec3.ZERO, 10).isEmpty()).isTrue();
  }

  @Test
  void keepsEulersFormulaForRandomPlanes() {
    Random random = new Random(3);
    for (int round = 0; round < 200; round++) {
      List<Plane> planes = new ArrayList<>();
      for (int k = 0; k < 4 + round % 30; k++) {
        Vec3 n =
            new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
        planes.add(new Plane(n, 0.5 + random.nextDouble()));
      }
      ConvexSolid solid = ConvexSolid.of(planes, Vec3.ZERO, 100);
      if (!solid.bounded()) {
        continue;
      }
      List<ConvexSolid.Edge> edges = solid.edges();
      long corners =
          edges.stream()
              .flatMap(edge -> List.of(edge.from(), edge.to()).stream())
              .map(corner -> List.of(corner.first(), corner.second(), corner.third()))
              .distinct()
              .count();
      long faces =
          java.util.stream.IntStream.range(0, planes.size())
              .filter(k -> !solid.face(k).isEmpty())
              .count();
      // Euler: V - E + F = 2 for every convex polyhedron
      assertThat(corners - edges.size() + faces).isEqualTo(2);
    }
  }

  @Test
  void namesEdgesInTheirDirectionOnTheLeftFace() {
    ConvexSolid cube =
        ConvexSolid.of(
            List.of(
                new Plane(Vec3.X, 1),
                new Plane(Vec3.X.times(-1), 1),
                new Plane(Vec3.Y, 1),
                new Plane(Vec3.Y.times(-1), 1),
                new Plane(Vec3.Z, 1),
                new Plane(Vec3.Z.times(-1), 1)),
            Vec3.ZERO,
            10);
    for (ConvexSolid.Edge edge : cube.edges()) {
      Vec3 left = cube.planes().get(edge.left()).normal();
      Vec3 right = cube.planes().get(edge.right()).normal();
      Vec3 along = edge.to().point().minus(edge.from().point()).unit();
      assertThat(along.distance(left.cross(right))).isCloseTo(0, within(1e-12));
    }
  }
}
