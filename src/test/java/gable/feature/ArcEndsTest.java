package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.fixture.MeshSketch;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Ends of a wall three quarters round about z, with a radius of 4 and 10 high. */
class ArcEndsTest {

  private static final Cylinder WALL = Cylinder.about(Vec3.ZERO, Vec3.Z, 4);

  private static Vec3 at(double degrees, double w) {
    return WALL.point(
        4 * Math.cos(Math.toRadians(degrees)), 4 * Math.sin(Math.toRadians(degrees)), w);
  }

  /** Up the high end in steps of 30 degrees, with a step back where {@code back} says so. */
  private static List<Vec3> boundary(int first, double back) {
    List<Vec3> points = new ArrayList<>();
    for (int k = 0; k <= 9; k++) {
      points.add(at(30 * k, 10));
      if (k == 4 && back > 0) {
        points.add(at(30 * k + back, 10));
        points.add(at(30 * k + 1e-6, 10));
      }
    }
    for (int k = 9; k >= 0; k--) {
      points.add(at(30 * k, 0));
    }
    List<Vec3> turned = new ArrayList<>(points.subList(first, points.size()));
    turned.addAll(points.subList(0, first));
    return turned;
  }

  private static ArcEnds ends(List<Vec3> points, Mesh mesh) {
    List<Integer> halfEdges = new ArrayList<>();
    for (int k = 0; k < points.size(); k++) {
      halfEdges.add(3 * k);
    }
    return ArcEnds.of(mesh, WALL, List.of(new BoundaryLoops.Loop(halfEdges, 0)));
  }

  /** A fan of facets whose first half-edges are the boundary. */
  private static Mesh mesh(List<Vec3> points) {
    var sketch = new MeshSketch();
    points.forEach(sketch::point);
    int middle = sketch.point(Vec3.ZERO);
    for (int k = 0; k < points.size(); k++) {
      sketch.facet(k, (k + 1) % points.size(), middle);
    }
    return sketch.mesh();
  }

  private static void checkEnds(int first, double back, int high) {
    List<Vec3> points = boundary(first, back);
    Mesh mesh = mesh(points);
    ArcEnds ends = ends(points, mesh);
    assertThat(ends.low()).hasSize(9);
    assertThat(ends.high()).hasSize(high);
    assertThat(ends.low()).allMatch(h -> WALL.w(mesh.point(mesh.origin(h))) < 1);
    assertThat(ends.high()).allMatch(h -> WALL.w(mesh.point(mesh.origin(h))) > 9);
    assertThat(Math.toDegrees(ends.turns())).isCloseTo(270, within(1e-9));
  }

  @Test
  void eachEndHasTheEdgesAlongIt() {
    for (int first = 0; first < 20; first++) {
      checkEnds(first, 0, 9);
    }
  }

  /** A facet without area at a mouth leads back: a walk along the mouth is no walk along both. */
  @Test
  void aSliverThatLeadsBackBelongsToItsOwnEnd() {
    for (int first = 0; first < 22; first++) {
      checkEnds(first, 3, 11);
    }
  }
}
