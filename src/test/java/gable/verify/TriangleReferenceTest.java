package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;

import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Triangles on a small grid, where touching, coplanar and collinear ones are common, against a slow
 * test by separating directions in whole numbers: two convex sets are apart exactly if a product of
 * edges, or of such a product with an edge, parts them (separating axis theorem for polytopes).
 */
class TriangleReferenceTest {

  /**
   * On a grid of 4 points a side, of two edges across from a corner one is at most 5.2 away and the
   * other at least 1/5.2: a wedge cut off at 1/32 and 32 times the edge has all that matters.
   */
  private static final long WIDE = 32;

  /** How near to a common edge is near: a 64th of the way to the third corner. */
  private static final long FINE = 128;

  private static long[] cross(long[] a, long[] b) {
    return new long[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  private static long dot(long[] a, long[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  private static long[] minus(long[] a, long[] b) {
    return new long[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
  }

  /** Point a + (b − a) t. */
  private static long[] between(long[] a, long[] b, long times) {
    long[] d = minus(b, a);
    return new long[] {a[0] + d[0] * times, a[1] + d[1] * times, a[2] + d[2] * times};
  }

  private static boolean apart(List<long[]> p, List<long[]> q) {
    List<long[]> edges = new ArrayList<>();
    for (List<long[]> set : List.of(p, q)) {
      for (int k = 0; k < set.size(); k++) {
        edges.add(minus(set.get((k + 1) % set.size()), set.get(k)));
      }
    }
    List<long[]> directions = new ArrayList<>(edges);
    for (long[] e : edges) {
      for (long[] f : edges) {
        long[] n = cross(e, f);
        directions.add(n);
        directions.add(cross(n, e));
      }
    }
    return directions.stream().anyMatch(d -> parts(d, p, q) || parts(d, q, p));
  }

  private static boolean parts(long[] d, List<long[]> p, List<long[]> q) {
    long most = p.stream().mapToLong(x -> dot(d, x)).max().orElseThrow();
    long least = q.stream().mapToLong(x -> dot(d, x)).min().orElseThrow();
    return most < least;
  }

  private static boolean flat(long[] a, long[] b, long[] c) {
    long[] n = cross(minus(b, a), minus(c, a));
    return n[0] == 0 && n[1] == 0 && n[2] == 0;
  }

  private static Triangle triangle(int[] numbers, List<long[]> places, int first) {
    int i = numbers[first % 3];
    int j = numbers[(first + 1) % 3];
    int k = numbers[(first + 2) % 3];
    return new Triangle(i, j, k, vec(places.get(i)), vec(places.get(j)), vec(places.get(k)));
  }

  /** Places that are exact in binary, so that touching stays touching. */
  private static Vec3 vec(long[] p) {
    return new Vec3(p[0] / 64.0 - 1, p[1] / 64.0 + 3, p[2] / 64.0);
  }

  private static List<long[]> places(Random random) {
    List<long[]> places = new ArrayList<>();
    int reach = 2 + random.nextInt(3);
    for (int k = 0; k < 6; k++) {
      places.add(
          new long[] {
            random.nextInt(reach),
            random.nextInt(reach),
            random.nextInt(4) == 0 ? random.nextInt(reach) : 1
          });
    }
    return places;
  }

  /** What the slow method says of triangles (0 1 2) and one that shares some of its corners. */
  private static boolean expected(List<long[]> p, int common) {
    long[] a = p.get(0);
    if (common == 0) {
      return !apart(p.subList(0, 3), p.subList(3, 6));
    }
    if (common == 1) {
      // the wedge of the first at the common corner, but for its tip, against the edge across
      List<long[]> wedge =
          List.of(
              between(a, p.get(1), 1),
              between(a, p.get(1), WIDE * WIDE),
              between(a, p.get(2), WIDE * WIDE),
              between(a, p.get(2), 1));
      return !apart(wedge, List.of(between(a, p.get(4), WIDE), between(a, p.get(5), WIDE)));
    }
    // from the middle of the common edge to the other third corner, but for its start
    long[] middle = new long[3];
    for (int i = 0; i < 3; i++) {
      middle[i] = FINE * (a[i] + p.get(1)[i]) / 2;
    }
    List<long[]> first = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      first.add(between(new long[3], p.get(k), FINE));
    }
    long[] apex = between(new long[3], p.get(5), FINE);
    long[] start = new long[3];
    for (int i = 0; i < 3; i++) {
      start[i] = middle[i] + (apex[i] - middle[i]) / (FINE / 2);
    }
    return !apart(first, List.of(start, apex));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void agreesWithSeparatingDirections(int common) {
    Random random = new Random(20 + common);
    int meeting = 0;
    for (int round = 0; round < 12000; round++) {
      List<long[]> p = places(random);
      int[] other =
          common == 0
              ? new int[] {3, 4, 5}
              : common == 1 ? new int[] {0, 4, 5} : new int[] {0, 1, 5};
      if (flat(p.get(0), p.get(1), p.get(2))
          || flat(p.get(other[0]), p.get(other[1]), p.get(other[2]))) {
        continue;
      }
      boolean expected = expected(p, common);
      meeting += expected ? 1 : 0;
      Triangle one = triangle(new int[] {0, 1, 2}, p, random.nextInt(3));
      Triangle two =
          random.nextBoolean()
              ? triangle(other, p, random.nextInt(3))
              : triangle(new int[] {other[0], other[2], other[1]}, p, random.nextInt(3));
      assertThat(one.crosses(two)).as("round %d", round).isEqualTo(expected);
      assertThat(two.crosses(one)).as("round %d, changed places", round).isEqualTo(expected);
    }
    assertThat(meeting).isGreaterThan(300);
  }
}
