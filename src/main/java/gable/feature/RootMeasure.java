package gable.feature;

import gable.geom.Axis;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads the end of a pin's round wall at the root where a rib stands against the pin: along the rib
 * the end runs up one side, across, and down the other, so that it says nothing of the wall that
 * carries the pin. What is left is that wall.
 *
 * <p>A rib is a notch of the end between two edges along the axis that are nearer to each other
 * than three quarters of the diameter and reach at least a third of the radius; a wall that is
 * slanted or curved rises slowly. Lengths are millimetres along the axis.
 */
final class RootMeasure {

  /** Slope of an edge that runs along the axis, not along a slanted or curved wall. */
  private static final double STEEP = 6;

  /** Widest rib, as a share of the diameter. */
  private static final double WIDEST = 0.75;

  /** Shortest rib, as a share of the radius. */
  private static final double SHORTEST = 1.0 / 3;

  private final Axis axis;
  private final double radius;
  private final List<Vec3> loop;
  private final double[] heights;
  private final boolean[] rib;
  private final List<Pin.Rib> ribs = new ArrayList<>();

  /**
   * Measures.
   *
   * @param axis from root to tip
   * @param loop the end of the wall at the root, in order
   */
  RootMeasure(Axis axis, double radius, List<Vec3> loop) {
    this.axis = axis;
    this.radius = radius;
    this.loop = loop;
    this.heights = loop.stream().mapToDouble(axis::parameter).toArray();
    this.rib = new boolean[heights.length];
    for (int k = 0; k < heights.length; k++) {
      if (rise(k, 1) >= SHORTEST * radius) {
        notch(k);
      }
    }
    if (lowest() > highest()) {
      ribs.clear(); // ribs all around leave no wall to measure
    }
  }

  /** The ribs, their ends along the axis. */
  List<Pin.Rib> ribs() {
    return ribs;
  }

  /** The ribs, their ends from a place along the axis. */
  List<Pin.Rib> ribs(double from) {
    return ribs.stream()
        .map(rib -> new Pin.Rib(rib.direction(), rib.width(), rib.end() - from))
        .toList();
  }

  /**
   * Where along the axis the pin leaves its wall: where a flat one meets the axis, else midway
   * between the nearest and the farthest place.
   */
  double at(double tolerance) {
    double[] plane = plane();
    return isFlat(plane, tolerance) ? plane[0] : (lowest() + highest()) / 2;
  }

  /** What the wall is. */
  RootKind kind(double tolerance) {
    if (highest() - lowest() <= 2 * tolerance) {
      return RootKind.SQUARE;
    }
    return isFlat(plane(), tolerance) ? RootKind.SLANTED : RootKind.CURVED;
  }

  /** Height on the axis and its rise in two directions, of the plane that fits best. */
  private double[] plane() {
    double[] packed = new double[9];
    for (int k = 0; k < heights.length; k++) {
      if (!rib[k]) {
        double[] row = row(k);
        int at = 0;
        for (int i = 0; i < 3; i++) {
          for (int j = i; j < 4; j++) {
            packed[at++] += row[i] * row[j];
          }
        }
      }
    }
    return NormalEquations.solve(packed, 3);
  }

  private double[] row(int k) {
    Vec3 across = axis.direction().anySquare();
    Vec3 off = loop.get(k).minus(axis.origin());
    double v = off.dot(axis.direction().cross(across));
    return new double[] {1, off.dot(across), v, heights[k]};
  }

  private boolean isFlat(double[] plane, double tolerance) {
    double most = plane.length == 3 ? 0 : Double.POSITIVE_INFINITY;
    for (int k = 0; k < heights.length && plane.length == 3; k++) {
      double[] row = row(k);
      double off = row[3] - plane[0] - plane[1] * row[1] - plane[2] * row[2];
      most = rib[k] ? most : Math.max(most, Math.abs(off));
    }
    return most <= 2 * tolerance;
  }

  private double lowest() {
    double low = Double.POSITIVE_INFINITY;
    for (int k = 0; k < heights.length; k++) {
      low = rib[k] ? low : Math.min(low, heights[k]);
    }
    return low;
  }

  private double highest() {
    double high = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < heights.length; k++) {
      high = rib[k] ? high : Math.max(high, heights[k]);
    }
    return high;
  }

  private int next(int k) {
    return (k + 1) % heights.length;
  }

  /** How far the end rises (or falls) along the axis in one go from a corner on. */
  private double rise(int from, int sign) {
    double sum = 0;
    int k = from;
    for (int step = 0; step < heights.length && isSteep(k, sign); step++) {
      sum += sign * (heights[next(k)] - heights[k]);
      k = next(k);
    }
    return sum;
  }

  private boolean isSteep(int k, int sign) {
    return sign * (heights[next(k)] - heights[k]) > STEEP * across(k);
  }

  /** How far an edge goes about the axis. */
  private double across(int k) {
    Vec3 edge = loop.get(next(k)).minus(loop.get(k));
    return edge.cross(axis.direction()).norm();
  }

  /** Follows the end from the foot of a rib over its end to its other foot. */
  private void notch(int foot) {
    if (isSteep((foot + heights.length - 1) % heights.length, 1)) {
      return; // in the middle of a side
    }
    double most = WIDEST * 2 * radius;
    boolean fallen = false;
    List<Integer> inside = new ArrayList<>();
    for (int k = next(foot); k != foot; k = next(k)) {
      if (fallen && !isSteep(k, -1)) {
        add(foot, k, inside);
        return;
      }
      if (squareDistance(foot, k) > most * most) {
        return;
      }
      fallen |= rise(k, -1) >= SHORTEST * radius;
      inside.add(k);
    }
  }

  private void add(int foot, int otherFoot, List<Integer> inside) {
    double end = Double.NEGATIVE_INFINITY;
    for (int k : inside) {
      rib[k] = true;
      end = Math.max(end, heights[k]);
    }
    Vec3 a = loop.get(foot);
    Vec3 b = loop.get(otherFoot);
    Vec3 middle = a.plus(b).times(0.5);
    Vec3 out = middle.minus(axis.at(axis.parameter(middle)));
    ribs.add(new Pin.Rib(out.unit(), Math.sqrt(squareDistance(foot, otherFoot)), end));
  }

  /** Square of how far two corners are apart as seen along the axis. */
  private double squareDistance(int one, int other) {
    Vec3 across = loop.get(other).minus(loop.get(one)).cross(axis.direction());
    return across.dot(across);
  }
}
