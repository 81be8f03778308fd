package gable.feature;

import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.List;

/**
 * The two ends of a wall that does not go all the way round, from its boundary: one loop that runs
 * along the high end (with the turn about the axis), down a side, back along the low end and up the
 * other side.
 *
 * @param low half-edges along the low end
 * @param high half-edges along the high end
 * @param turns how many radians the wall winds about the axis
 */
record ArcEnds(List<Integer> low, List<Integer> high, double turns) {

  /** An edge of which this share goes about the axis belongs to an end, not to a side. */
  private static final double ACROSS = 0.2;

  ArcEnds {
    low = List.copyOf(low);
    high = List.copyOf(high);
  }

  /** The ends by the loop that winds most. */
  static ArcEnds of(Mesh mesh, Cylinder cylinder, List<BoundaryLoops.Loop> loops) {
    ArcEnds ends = new ArcEnds(List.of(), List.of(), 0);
    for (BoundaryLoops.Loop loop : loops) {
      ArcEnds other = of(mesh, cylinder, loop);
      if (other.turns > ends.turns) {
        ends = other;
      }
    }
    return ends;
  }

  private static ArcEnds of(Mesh mesh, Cylinder cylinder, BoundaryLoops.Loop loop) {
    List<Integer> edges = loop.halfEdges();
    double[] at = new double[edges.size() + 1];
    int least = 0;
    int greatest = 0;
    for (int k = 0; k < edges.size(); k++) {
      at[k + 1] = at[k] + turn(mesh, cylinder, edges.get(k));
      least = at[k] < at[least] ? k : least;
      greatest = at[k] > at[greatest] ? k : greatest;
    }
    List<Integer> low = new ArrayList<>();
    List<Integer> high = new ArrayList<>();
    for (int k = 0; k < edges.size(); k++) {
      double turn = at[k + 1] - at[k];
      int h = edges.get(k);
      double length = mesh.point(mesh.origin(h)).distance(mesh.point(mesh.target(h)));
      if (Math.abs(turn) * cylinder.radius() >= ACROSS * length) {
        // slivers along an end may lead back a little: they belong to the end that they lie at
        boolean up = loop.winding() == 0 ? isBetween(least, k, greatest) : turn > 0;
        (up ? high : low).add(h);
      }
    }
    double most = Math.max(at[edges.size()], at[greatest]);
    return new ArcEnds(low, high, most - Math.min(at[edges.size()], at[least]));
  }

  /** True if k comes at or after the first and before the last, going round. */
  private static boolean isBetween(int first, int k, int last) {
    return first <= last ? first <= k && k < last : first <= k || k < last;
  }

  private static double turn(Mesh mesh, Cylinder cylinder, int halfEdge) {
    double from = cylinder.angle(mesh.point(mesh.origin(halfEdge)));
    double to = cylinder.angle(mesh.point(mesh.target(halfEdge)));
    return Angles.wrapped(to - from);
  }
}
