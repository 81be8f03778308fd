package gable.compare;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
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
  private final int[] placesBefore;
  private final int[] placesAfter;
  private final Facet[] old;
  private final Facet[] now;

  private Surfaces(Mesh before, Mesh after) {
    this.before = before;
    this.after = after;
    this.placesBefore = placesOf(before);
    this.placesAfter = placesOf(after);
    this.old = facets(before, placesBefore);
    this.now = facets(after, placesAfter);
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
    boolean[] onNewFace = new boolean[come.length];
    for (int index = 0; index < come.length; index++) {
      onNewFace[index] = !planes.contains(plane(after, come[index]));
    }
    Joined joined = new Joined();
    int[] corners = new int[3 * come.length];
    for (int at = 0; at < corners.length; at++) {
      corners[at] = joined.vertex(after.corner(come[at / 3], at % 3));
    }
    return new MeshEdit(gone, joined.points(), corners, new int[come.length], onNewFace);
  }

  /** Vertices for what comes: those of the first surface where it has one at the place. */
  private final class Joined {
    private final int[] atPlace = new int[places.size()]; // number plus one; 0 where there is none
    private final List<Integer> added = new ArrayList<>();

    Joined() {
      for (int vertex = before.vertexCount() - 1; vertex >= 0; vertex--) {
        atPlace[placesBefore[vertex]] = vertex + 1;
      }
    }

    int vertex(int ofAfter) {
      int place = placesAfter[ofAfter];
      if (atPlace[place] == 0) {
        added.add(ofAfter);
        atPlace[place] = before.vertexCount() + added.size();
      }
      return atPlace[place] - 1;
    }

    double[] points() {
      double[] points = new double[3 * added.size()];
      for (int index = 0; index < added.size(); index++) {
        points[3 * index] = after.x(added.get(index));
        points[3 * index + 1] = after.y(added.get(index));
        points[3 * index + 2] = after.z(added.get(index));
      }
      return points;
    }
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

  private int[] placesOf(Mesh mesh) {
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
    return numbers;
  }

  private static Facet[] facets(Mesh mesh, int[] numbers) {
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
