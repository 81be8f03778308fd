package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Finds the rulings of a prismatic wall. */
final class SectionMeasure {

  /** Rulings must be this many times farther apart than their vertices stray. */
  private static final double APART = 6;

  private final Surface surface;
  private final Mesh mesh;
  private final Cylinder cylinder;
  private final double tolerance;

  /** Prepares the search in the section frame of {@code cylinder}. */
  SectionMeasure(Surface surface, Cylinder cylinder, double tolerance) {
    this.surface = surface;
    this.mesh = surface.mesh();
    this.cylinder = cylinder;
    this.tolerance = tolerance;
  }

  /**
   * Measures a wall.
   *
   * @param vertices all vertices of the wall
   * @param corners those at which the wall turns
   * @param low vertices of the rim at the smaller w
   * @param high vertices of the rim at the larger w
   */
  WallSection measure(int[] vertices, int[] corners, int[] low, int[] high) {
    double[] uvw = new double[3 * vertices.length];
    for (int k = 0; k < vertices.length; k++) {
      Vec3 point = mesh.point(vertices[k]);
      uvw[3 * k] = cylinder.u(point);
      uvw[3 * k + 1] = cylinder.v(point);
      uvw[3 * k + 2] = cylinder.w(point);
    }
    List<Ruling> rulings = rulings(corners, setOf(low), setOf(high));
    double deviation = rulings.isEmpty() ? 0 : deviation(rulings, uvw);
    if (rulings.isEmpty() || deviation > tolerance) {
      return new WallSection(false, List.of(), uvw, 0, tolerance);
    }
    return new WallSection(true, rulings, uvw, deviation, tolerance);
  }

  private Set<Integer> setOf(int[] vertices) {
    Set<Integer> set = new HashSet<>(2 * vertices.length);
    for (int vertex : vertices) {
      set.add(surface.welded(vertex));
    }
    return set;
  }

  /** A corner in the section. */
  private record Corner(int vertex, double u, double v, double w, double angle) {}

  private List<Ruling> rulings(int[] corners, Set<Integer> low, Set<Integer> high) {
    Corner[] sorted = new Corner[corners.length];
    for (int k = 0; k < corners.length; k++) {
      Vec3 point = mesh.point(corners[k]);
      sorted[k] =
          new Corner(
              corners[k],
              cylinder.u(point),
              cylinder.v(point),
              cylinder.w(point),
              cylinder.angle(point));
    }
    Arrays.sort(sorted, Comparator.comparingDouble(Corner::angle));
    int first = widestGap(sorted);
    List<Ruling> rulings = new ArrayList<>();
    List<Corner> cluster = new ArrayList<>();
    for (int k = 0; k < sorted.length; k++) {
      Corner corner = sorted[(first + k) % sorted.length];
      if (!cluster.isEmpty() && apart(cluster.get(cluster.size() - 1), corner)) {
        if (!close(cluster, low, high, rulings)) {
          return List.of();
        }
        cluster.clear();
      }
      cluster.add(corner);
    }
    return close(cluster, low, high, rulings) ? startedAtLeastAngle(rulings) : List.of();
  }

  private static List<Ruling> startedAtLeastAngle(List<Ruling> rulings) {
    List<Ruling> sorted = new ArrayList<>(rulings);
    sorted.sort(Comparator.comparingDouble(r -> Math.atan2(r.v(), r.u())));
    return sorted;
  }

  /** Where to cut the turn so that no ruling is split. */
  private static int widestGap(Corner[] sorted) {
    int widest = 0;
    double gap = -1;
    for (int k = 0; k < sorted.length; k++) {
      double before = sorted[k == 0 ? sorted.length - 1 : k - 1].angle;
      double here = sorted[k].angle - before + (k == 0 ? Angles.TURN : 0);
      if (here > gap) {
        gap = here;
        widest = k;
      }
    }
    return widest;
  }

  /** Vertices of one ruling stray by the tolerance at most, to either side. */
  private boolean apart(Corner a, Corner b) {
    return Math.hypot(a.u - b.u, a.v - b.v) > 2 * tolerance;
  }

  /** Ends a cluster; false if it is no ruling from end to end. */
  private boolean close(
      List<Corner> cluster, Set<Integer> low, Set<Integer> high, List<Ruling> rulings) {
    double u = 0;
    double v = 0;
    double wMin = Double.POSITIVE_INFINITY;
    double wMax = Double.NEGATIVE_INFINITY;
    boolean atLow = false;
    boolean atHigh = false;
    for (Corner corner : cluster) {
      u += corner.u / cluster.size();
      v += corner.v / cluster.size();
      wMin = Math.min(wMin, corner.w);
      wMax = Math.max(wMax, corner.w);
      atLow |= low.contains(corner.vertex);
      atHigh |= high.contains(corner.vertex);
    }
    double deviation = 0;
    for (Corner corner : cluster) {
      deviation = Math.max(deviation, Math.hypot(corner.u - u, corner.v - v));
    }
    boolean distinct =
        rulings.isEmpty()
            || Math.hypot(
                    rulings.get(rulings.size() - 1).u() - u,
                    rulings.get(rulings.size() - 1).v() - v)
                > APART * deviation;
    rulings.add(new Ruling(u, v, deviation, wMin, wMax));
    return atLow && atHigh && distinct;
  }

  /** Largest distance of any vertex from the polygon of the rulings. */
  private double deviation(List<Ruling> rulings, double[] uvw) {
    double most = 0;
    double[] angles = new double[rulings.size()];
    for (int k = 0; k < angles.length; k++) {
      angles[k] = Math.atan2(rulings.get(k).v(), rulings.get(k).u());
    }
    for (int k = 0; k < uvw.length; k += 3) {
      int found = Arrays.binarySearch(angles, Math.atan2(uvw[k + 1], uvw[k]));
      int after = found >= 0 ? found : -found - 1;
      Ruling a = rulings.get((after + angles.length - 1) % angles.length);
      Ruling b = rulings.get(after % angles.length);
      Ruling c = rulings.get((after + 1) % angles.length);
      double here =
          Math.min(distance(a, b, uvw[k], uvw[k + 1]), distance(b, c, uvw[k], uvw[k + 1]));
      most = Math.max(most, here);
    }
    return most;
  }

  /** Distance of (u, v) from the segment between two rulings. */
  private static double distance(Ruling a, Ruling b, double u, double v) {
    double du = b.u() - a.u();
    double dv = b.v() - a.v();
    double square = du * du + dv * dv;
    double at = square > 0 ? ((u - a.u()) * du + (v - a.v()) * dv) / square : 0;
    double held = Math.max(0, Math.min(1, at));
    return Math.hypot(u - a.u() - held * du, v - a.v() - held * dv);
  }
}
