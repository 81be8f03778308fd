package gable.report;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Where a plane cuts a closed mesh: closed rings of segments with the solid on their left, seen
 * against the plane's normal. A vertex in the plane counts as above it, in every facet alike, so
 * rings close whatever the plane meets.
 *
 * <p>Coordinates u and v are along the plane's two directions, measured from the origin of print
 * space. Costs one pass over the mesh.
 */
final class Slice {

  private final Mesh mesh;
  private final SectionPlane plane;
  private final double[] heights;
  private final List<Integer> facets = new ArrayList<>();
  private final List<double[]> segments = new ArrayList<>();
  private final List<double[]> rings = new ArrayList<>();

  private Slice(Mesh mesh, SectionPlane plane) {
    this.mesh = mesh;
    this.plane = plane;
    this.heights = new double[mesh.vertexCount()];
  }

  /** The slice of a mesh. */
  static Slice of(Mesh mesh, SectionPlane plane) {
    Slice slice = new Slice(mesh, plane);
    slice.measure();
    slice.chain();
    return slice;
  }

  /** u and v of the start and the end of each segment. */
  List<double[]> segments() {
    return segments;
  }

  /** The facet in which a segment lies. */
  int facet(int segment) {
    return facets.get(segment);
  }

  /** u and v of the corners of each closed ring. */
  List<double[]> rings() {
    return rings;
  }

  private void measure() {
    Vec3 w = plane.w();
    for (int vertex = 0; vertex < heights.length; vertex++) {
      heights[vertex] =
          w.x() * mesh.x(vertex) + w.y() * mesh.y(vertex) + w.z() * mesh.z(vertex) - plane.offset();
    }
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      boolean a = heights[mesh.corner(facet, 0)] >= 0;
      boolean b = heights[mesh.corner(facet, 1)] >= 0;
      if (a != b || b != heights[mesh.corner(facet, 2)] >= 0) {
        facets.add(facet);
      }
    }
  }

  private void chain() {
    Map<Long, Integer> byStart = new HashMap<>();
    long[] ends = new long[facets.size()];
    for (int index = 0; index < facets.size(); index++) {
      double[] segment = new double[4];
      for (int k = 0; k < 3; k++) {
        int from = mesh.corner(facets.get(index), k);
        int to = mesh.corner(facets.get(index), (k + 1) % 3);
        boolean falls = heights[from] >= 0 && heights[to] < 0;
        boolean rises = heights[from] < 0 && heights[to] >= 0;
        if (falls) {
          byStart.put(edge(from, to), index);
          put(segment, 0, from, to);
        } else if (rises) {
          ends[index] = edge(from, to);
          put(segment, 2, to, from);
        }
      }
      segments.add(segment);
    }
    collect(byStart, ends);
  }

  private void collect(Map<Long, Integer> byStart, long[] ends) {
    boolean[] used = new boolean[ends.length];
    for (int first = 0; first < ends.length; first++) {
      List<double[]> ring = new ArrayList<>();
      int at = first;
      while (at >= 0 && !used[at]) {
        used[at] = true;
        ring.add(segments.get(at));
        at = byStart.getOrDefault(ends[at], -1);
      }
      if (at == first && ring.size() > 2) {
        double[] corners = new double[2 * ring.size()];
        for (int k = 0; k < ring.size(); k++) {
          System.arraycopy(ring.get(k), 0, corners, 2 * k, 2);
        }
        rings.add(corners);
      }
    }
  }

  private static long edge(int a, int b) {
    return (long) Math.min(a, b) << 32 | Math.max(a, b);
  }

  /** The point between a vertex above and one below; the same from both facets of the edge. */
  private void put(double[] segment, int at, int above, int below) {
    double share = heights[above] / (heights[above] - heights[below]);
    Vec3 p = mesh.point(above);
    Vec3 point = p.plus(mesh.point(below).minus(p).times(share));
    segment[at] = point.dot(plane.u());
    segment[at + 1] = point.dot(plane.v());
  }
}
