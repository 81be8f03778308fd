package gable.compare;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * What turns one surface into another: facets that only the first has go, those that only the
 * second has come. Facets are the same if their corners are, by place and in order; numbers of
 * vertices and facets do not count.
 */
final class Surfaces {

  /** Steps to a millimetre: places that round to the same step are one. */
  private static final double STEPS = 1e4;

  /** Directions and distances of planes are compared in steps of a thousandth. */
  private static final double PLANE_STEPS = 1e3;

  private final Map<Place, Integer> places = new HashMap<>();
  private final Mesh before;
  private final Mesh after;
  private final Facet[] old;
  private final Facet[] now;

  private Surfaces(Mesh before, Mesh after) {
    this.before = before;
    this.after = after;
    this.old = facets(before);
    this.now = facets(after);
  }

  private record Place(long x, long y, long z) {}

  private record Facet(int a, int b, int c) {}

  private record Flat(long x, long y, long z, long offset) {}

  static MeshEdit edit(Mesh before, Mesh after) {
    return new Surfaces(before, after).edit();
  }

  private MeshEdit edit() {
    int[] gone = without(old, now);
    int[] come = without(now, old);
    Set<Flat> planes = new HashSet<>();
    for (int facet : gone) {
      planes.add(plane(before, facet));
    }
    double[] points = new double[9 * come.length];
    int[] corners = new int[3 * come.length];
    boolean[] onNewFace = new boolean[come.length];
    for (int index = 0; index < come.length; index++) {
      for (int k = 0; k < 3; k++) {
        Vec3 p = after.point(after.corner(come[index], k));
        int at = 3 * index + k;
        points[3 * at] = p.x();
        points[3 * at + 1] = p.y();
        points[3 * at + 2] = p.z();
        corners[at] = before.vertexCount() + at;
      }
      onNewFace[index] = !planes.contains(plane(after, come[index]));
    }
    return new MeshEdit(gone, points, corners, new int[come.length], onNewFace);
  }

  /** Facets of one surface that the other does not have, each as often as it has it more often. */
  private static int[] without(Facet[] some, Facet[] others) {
    Map<Facet, Integer> left = new HashMap<>();
    for (Facet facet : others) {
      left.merge(facet, 1, Integer::sum);
    }
    int[] found = new int[some.length];
    int count = 0;
    for (int facet = 0; facet < some.length; facet++) {
      int there = left.getOrDefault(some[facet], 0);
      if (there == 0) {
        found[count++] = facet;
      } else {
        left.put(some[facet], there - 1);
      }
    }
    return Arrays.copyOf(found, count);
  }

  private Facet[] facets(Mesh mesh) {
    int[] numbers = new int[mesh.vertexCount()];
    for (int vertex = 0; vertex < numbers.length; vertex++) {
      Place place =
          new Place(
              Math.round(mesh.x(vertex) * STEPS),
              Math.round(mesh.y(vertex) * STEPS),
              Math.round(mesh.z(vertex) * STEPS));
      Integer known = places.putIfAbsent(place, places.size());
      numbers[vertex] = known == null ? places.size() - 1 : known;
    }
    Facet[] facets = new Facet[mesh.facetCount()];
    for (int facet = 0; facet < facets.length; facet++) {
      facets[facet] =
          fromSmallest(
              numbers[mesh.corner(facet, 0)],
              numbers[mesh.corner(facet, 1)],
              numbers[mesh.corner(facet, 2)]);
    }
    return facets;
  }

  private static Facet fromSmallest(int a, int b, int c) {
    if (a <= b && a <= c) {
      return new Facet(a, b, c);
    }
    return b <= c ? new Facet(b, c, a) : new Facet(c, a, b);
  }

  private static Flat plane(Mesh mesh, int facet) {
    Vec3 normal = mesh.facetNormal(facet);
    double length = normal.norm();
    Vec3 n = length > 0 ? normal.times(1 / length) : Vec3.ZERO;
    double offset = n.dot(mesh.point(mesh.corner(facet, 0)));
    return new Flat(
        Math.round(n.x() * PLANE_STEPS),
        Math.round(n.y() * PLANE_STEPS),
        Math.round(n.z() * PLANE_STEPS),
        Math.round(offset * PLANE_STEPS));
  }
}
