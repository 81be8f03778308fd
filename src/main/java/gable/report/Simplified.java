package gable.report;

import gable.feature.Feature;
import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.pipeline.FeatureResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * The surfaces of an object with few facets: exact near features, and elsewhere with all vertices
 * within a cell of a grid drawn together. Vertices are drawn together by their place alone, before
 * and after alike, so that no gap opens between exact and coarse parts.
 *
 * @param points three coordinates for each vertex
 * @param groups corners of facets: both before and after; before only, in walls of features; before
 *     only, elsewhere; after only; new faces
 */
@SuppressWarnings("ArrayRecordComponent") // large, made once, read by one writer, never compared
record Simplified(double[] points, List<int[]> groups) {

  private static final double NEAR = 1.5; // radii around a feature
  private static final int FINEST = 400; // cells along the diagonal; nine bits number them
  private static final int COARSEST = 4;

  static Simplified of(Shape shape, int most) {
    Mesh after = shape.after();
    if (after.facetCount() <= most) {
      return of(shape, after, identity(after.vertexCount()));
    }
    boolean[] near = near(shape, after);
    int[] number = new int[0];
    for (int cells = FINEST; cells >= COARSEST; cells /= 2) {
      number = drawnTogether(after, near, shape.any().box(), cells);
      if (facets(after, number) <= most) {
        break;
      }
    }
    return of(shape, after, number);
  }

  private static int[] identity(int count) {
    int[] number = new int[count];
    Arrays.setAll(number, vertex -> vertex);
    return number;
  }

  private static boolean[] near(Shape shape, Mesh mesh) {
    List<Box3> boxes = new ArrayList<>();
    for (FeatureResult each : Notices.features(shape.result())) {
      Feature feature = each.feature();
      double half = feature.length() / 2;
      Vec3 arm = feature.axis().direction().times(half);
      Vec3 middle = feature.axis().origin();
      Box3 line = Box3.EMPTY.with(middle.plus(arm)).with(middle.minus(arm));
      boxes.add(line.grown(NEAR * feature.radius()));
    }
    boolean[] near = new boolean[mesh.vertexCount()];
    Arrays.fill(near, shape.before().vertexCount(), near.length, true);
    for (Box3 box : boxes) {
      markInside(box, mesh, near);
    }
    return near;
  }

  private static void markInside(Box3 box, Mesh mesh, boolean[] near) {
    double low = box.min().x();
    double high = box.max().x();
    for (int vertex = 0; vertex < near.length; vertex++) {
      double x = mesh.x(vertex);
      if (x >= low && x <= high && !near[vertex]) {
        near[vertex] = box.contains(mesh.point(vertex));
      }
    }
  }

  /** Each vertex that is not near gets the number of the first one in its cell. */
  private static int[] drawnTogether(Mesh mesh, boolean[] near, Box3 box, int cells) {
    double size = Math.max(1e-9, box.diagonal() / cells);
    long[] keys = new long[near.length]; // cell, then number: nine bits for each coordinate
    int count = 0;
    for (int vertex = 0; vertex < near.length; vertex++) {
      if (!near[vertex]) {
        long x = (long) ((mesh.x(vertex) - box.min().x()) / size);
        long y = (long) ((mesh.y(vertex) - box.min().y()) / size);
        long z = (long) ((mesh.z(vertex) - box.min().z()) / size);
        keys[count++] = (x << 18 | y << 9 | z) << Integer.SIZE | vertex;
      }
    }
    Arrays.sort(keys, 0, count);
    int[] number = identity(near.length);
    for (int k = 1; k < count; k++) {
      if (keys[k] >> Integer.SIZE == keys[k - 1] >> Integer.SIZE) {
        number[(int) keys[k]] = number[(int) keys[k - 1]];
      }
    }
    return number;
  }

  private static int facets(Mesh mesh, int[] number) {
    int count = 0;
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      int a = number[mesh.corner(facet, 0)];
      int b = number[mesh.corner(facet, 1)];
      int c = number[mesh.corner(facet, 2)];
      count += a != b && b != c && c != a ? 1 : 0;
    }
    return count;
  }

  private static Simplified of(Shape shape, Mesh after, int[] number) {
    Mesh before = shape.before();
    boolean[] gone = new boolean[before.facetCount()];
    for (int k = 0; k < shape.edit().removedCount(); k++) {
      gone[shape.edit().removed(k)] = true;
    }
    int kept = before.facetCount() - shape.edit().removedCount();
    int[] used = new int[after.vertexCount()]; // 0 unused, else the new number plus 1
    List<Integer> order = new ArrayList<>();
    List<int[]> groups = new ArrayList<>();
    groups.add(group(before, number, facet -> !gone[facet], used, order));
    boolean[] wall = walls(shape);
    groups.add(group(before, number, facet -> gone[facet] && wall[facet], used, order));
    groups.add(group(before, number, facet -> gone[facet] && !wall[facet], used, order));
    groups.add(group(after, number, f -> f >= kept && !shape.isNew(f), used, order));
    groups.add(group(after, number, f -> f >= kept && shape.isNew(f), used, order));
    double[] points = new double[3 * order.size()];
    for (int k = 0; k < order.size(); k++) {
      points[3 * k] = after.x(order.get(k));
      points[3 * k + 1] = after.y(order.get(k));
      points[3 * k + 2] = after.z(order.get(k));
    }
    return new Simplified(points, groups);
  }

  private static boolean[] walls(Shape shape) {
    boolean[] wall = new boolean[shape.before().facetCount()];
    for (FeatureResult each : Notices.features(shape.result())) {
      for (int facet : each.feature().wall()) {
        wall[facet] = true;
      }
    }
    return wall;
  }

  private static int[] group(
      Mesh mesh, int[] number, IntPredicate wanted, int[] used, List<Integer> order) {
    int[] corners = new int[3 * mesh.facetCount()];
    int count = 0;
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      int a = number[mesh.corner(facet, 0)];
      int b = number[mesh.corner(facet, 1)];
      int c = number[mesh.corner(facet, 2)];
      if (wanted.test(facet) && a != b && b != c && c != a) {
        for (int vertex : new int[] {a, b, c}) {
          if (used[vertex] == 0) {
            order.add(vertex);
            used[vertex] = order.size();
          }
          corners[count++] = used[vertex] - 1;
        }
      }
    }
    return Arrays.copyOf(corners, count);
  }
}
