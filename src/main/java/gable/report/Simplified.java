package gable.report;

import gable.feature.Feature;
import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.pipeline.FeatureResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
  private static final int FINEST = 400; // cells along the diagonal
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
    for (int vertex = 0; vertex < near.length; vertex++) {
      near[vertex] = vertex >= shape.before().vertexCount() || isIn(boxes, mesh.point(vertex));
    }
    return near;
  }

  private static boolean isIn(List<Box3> boxes, Vec3 point) {
    for (Box3 box : boxes) {
      if (box.contains(point)) {
        return true;
      }
    }
    return false;
  }

  private static int[] drawnTogether(Mesh mesh, boolean[] near, Box3 box, int cells) {
    double size = Math.max(1e-9, box.diagonal() / cells);
    Map<Long, Integer> first = new HashMap<>();
    int[] number = new int[mesh.vertexCount()];
    for (int vertex = 0; vertex < number.length; vertex++) {
      if (near[vertex]) {
        number[vertex] = vertex;
        continue;
      }
      Vec3 p = mesh.point(vertex).minus(box.min());
      long cell =
          ((long) (p.x() / size) << 40) | ((long) (p.y() / size) << 20) | (long) (p.z() / size);
      Integer known = first.putIfAbsent(cell, vertex);
      number[vertex] = known == null ? vertex : known;
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
