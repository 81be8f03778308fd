package gable.feature;

import gable.mesh.Mesh;
import java.util.Arrays;

/**
 * Which part of a turn a set of facets covers as seen from the axis.
 *
 * @param covered covered angle in radians, up to 2π
 * @param gapStart where the widest gap starts, an angle about the axis from u towards v
 * @param gapWidth width of the widest gap; 0 if there is none
 */
record Coverage(double covered, double gapStart, double gapWidth) {

  /** Covers the turn facet by facet; no facet is wider than half a turn. */
  static Coverage of(Mesh mesh, int[] facets, int count, Cylinder cylinder) {
    double[][] spans = new double[count][];
    for (int k = 0; k < count; k++) {
      double first = cylinder.angle(mesh.point(mesh.corner(facets[k], 0)));
      double low = 0;
      double high = 0;
      for (int c = 1; c < 3; c++) {
        double angle = cylinder.angle(mesh.point(mesh.corner(facets[k], c)));
        double offset = Angles.wrapped(angle - first);
        low = Math.min(low, offset);
        high = Math.max(high, offset);
      }
      double start = first + low;
      spans[k] = new double[] {start < 0 ? start + Angles.TURN : start, high - low};
    }
    return merged(spans);
  }

  private static Coverage merged(double[][] spans) {
    Arrays.sort(spans, (a, b) -> Double.compare(a[0], b[0]));
    double reached = reachAcrossZero(spans);
    double gaps = 0;
    double widest = 0;
    double widestStart = 0;
    for (int k = 0; k <= spans.length; k++) {
      double next = k < spans.length ? spans[k][0] : spans[0][0] + Angles.TURN;
      double gap = next - reached;
      if (gap > 1e-9) { // closer than this is the same point
        gaps += gap;
        if (gap > widest) {
          widest = gap;
          widestStart = reached;
        }
      }
      if (k < spans.length) {
        reached = Math.max(reached, spans[k][0] + spans[k][1]);
      }
    }
    return new Coverage(Math.max(0, Angles.TURN - gaps), Angles.wrapped(widestStart), widest);
  }

  /** Where a sweep that starts at the first span has arrived before: spans may pass zero. */
  private static double reachAcrossZero(double[][] spans) {
    double reached = spans[0][0];
    for (double[] span : spans) {
      reached = Math.max(reached, span[0] + span[1] - Angles.TURN);
    }
    return reached;
  }

  /** True if there is no gap. */
  boolean isFull() {
    return gapWidth == 0;
  }

  /** Middle of the widest gap. */
  double gapMiddle() {
    return Angles.wrapped(gapStart + gapWidth / 2);
  }
}
