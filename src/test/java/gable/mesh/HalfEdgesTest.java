package gable.mesh;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Against the rule itself (3MF core specification 1.4, section 4.1), counted edge by edge without
 * any list.
 */
class HalfEdgesTest {

  private static final double[] POINTS = {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, 1, 1, 1};

  private static Mesh mesh(int... corners) {
    return Mesh.of(POINTS, corners);
  }

  private static boolean isClosedByCounting(int[] corners) {
    int count = corners.length;
    for (int h = 0; h < count; h++) {
      int from = corners[h];
      int to = corners[h - h % 3 + (h + 1) % 3];
      int there = 0;
      int back = 0;
      for (int other = 0; other < count; other++) {
        int start = corners[other];
        int end = corners[other - other % 3 + (other + 1) % 3];
        there += start == from && end == to ? 1 : 0;
        back += start == to && end == from ? 1 : 0;
      }
      if (there != 1 || back != 1) {
        return false;
      }
    }
    return true;
  }

  @Test
  void aTetrahedronIsClosedAndItsHalfEdgesArePaired() {
    Mesh mesh = mesh(0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3);
    HalfEdges edges = HalfEdges.of(mesh);
    assertThat(edges.closed()).isTrue();
    assertThat(HalfEdges.close(mesh)).isTrue();
    for (int h = 0; h < 12; h++) {
      assertThat(edges.opposite(edges.opposite(h))).isEqualTo(h);
      assertThat(mesh.origin(edges.opposite(h))).isEqualTo(mesh.target(h));
    }
  }

  @Test
  void aMissingAndATurnedFacetAreTold() {
    assertThat(HalfEdges.of(mesh(0, 2, 1, 0, 1, 3, 1, 2, 3)).openEdges()).isEqualTo(3);
    assertThat(HalfEdges.of(mesh(0, 2, 1, 0, 1, 3, 1, 2, 3, 0, 2, 3)).badEdges()).isEqualTo(3);
  }

  /** Few vertices and many tries, so that closed ones are among them. */
  @Test
  void agreesWithCountingOnFacetsAtRandom() {
    Random random = new Random(1);
    int[] solid = {0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3};
    int closed = 0;
    for (int round = 0; round < 2000; round++) {
      int[] corners = solid.clone();
      for (int change = random.nextInt(3); change > 0; change--) {
        corners[random.nextInt(12)] = random.nextInt(5);
      }
      Mesh mesh = mesh(corners);
      boolean expected = isClosedByCounting(corners);
      closed += expected ? 1 : 0;
      assertThat(HalfEdges.of(mesh).closed()).isEqualTo(expected);
      assertThat(HalfEdges.close(mesh)).isEqualTo(expected);
    }
    assertThat(closed).isBetween(100, 1900);
  }
}
