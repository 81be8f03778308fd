package gable.verify;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.IntFunction;

/**
 * No new facet meets another but in their common corners and edges, in print space and in single
 * precision. A meeting that the facets from which the two are cut had already is not held against
 * them.
 *
 * <p>A sweep along one axis finds the pairs whose boxes meet.
 */
final class CrossingProof {

  /**
   * Vertices nearer to each other than this in each coordinate, in millimetres, are at one place:
   * the grid on which new vertices are written. A meeting less deep is beyond what the file says.
   */
  private static final double SAME_PLACE = 1e-6;

  private final Patch patch;
  private final MeshEdit edit;
  private final Triangle[] triangles;
  private final double[] low;
  private final double[] high;

  private CrossingProof(Patch patch, MeshEdit edit, IntFunction<Vec3> place) {
    this.patch = patch;
    this.edit = edit;
    int count = patch.facetCount();
    Map<Integer, Integer> welded = welded(patch, place);
    this.triangles = new Triangle[count];
    this.low = new double[3 * count];
    this.high = new double[3 * count];
    for (int f = 0; f < count; f++) {
      int a = welded.getOrDefault(patch.corner(f, 0), patch.corner(f, 0));
      int b = welded.getOrDefault(patch.corner(f, 1), patch.corner(f, 1));
      int c = welded.getOrDefault(patch.corner(f, 2), patch.corner(f, 2));
      triangles[f] = new Triangle(a, b, c, place.apply(a), place.apply(b), place.apply(c));
      for (int k = 0; k < 3; k++) {
        double x = triangles[f].corner(0).get(k);
        double y = triangles[f].corner(1).get(k);
        double z = triangles[f].corner(2).get(k);
        low[3 * f + k] = Math.min(x, Math.min(y, z));
        high[3 * f + k] = Math.max(x, Math.max(y, z));
      }
    }
  }

  /**
   * For every vertex that lies on another one but for {@link #SAME_PLACE}, the one with the lowest
   * number there. Some producers write such pairs, joined by facets without area; whatever borders
   * on one of them borders on the other, as it did before the edit.
   */
  private static Map<Integer, Integer> welded(Patch patch, IntFunction<Vec3> place) {
    SortedSet<Integer> vertices = new TreeSet<>();
    for (int f = 0; f < patch.facetCount(); f++) {
      for (int k = 0; k < 3; k++) {
        vertices.add(patch.corner(f, k));
      }
    }
    List<Integer> order = new ArrayList<>(vertices);
    Map<Integer, Vec3> places = new HashMap<>();
    order.forEach(vertex -> places.put(vertex, place.apply(vertex)));
    order.sort(Comparator.comparingDouble(vertex -> at(places, vertex).x()));
    Map<Integer, Integer> welded = new HashMap<>();
    for (int i = 0; i < order.size(); i++) {
      Vec3 p = at(places, order.get(i));
      for (int j = i + 1; j < order.size(); j++) {
        Vec3 q = at(places, order.get(j));
        if (q.x() - p.x() > SAME_PLACE) {
          break;
        }
        if (Math.abs(q.y() - p.y()) <= SAME_PLACE && Math.abs(q.z() - p.z()) <= SAME_PLACE) {
          int low = Math.min(order.get(i), order.get(j));
          int high = Math.max(order.get(i), order.get(j));
          welded.merge(high, welded.getOrDefault(low, low), Math::min);
        }
      }
    }
    return welded;
  }

  private static Vec3 at(Map<Integer, Vec3> places, int vertex) {
    Vec3 place = places.get(vertex);
    if (place == null) {
      throw new IllegalStateException("vertex " + vertex + " has no place");
    }
    return place;
  }

  static Optional<Unsound> fault(Patch patch, MeshEdit edit) {
    return new CrossingProof(patch, edit, patch::point).fault(Proof.CROSSING, "");
  }

  static Optional<Unsound> fault(Patch patch, MeshEdit edit, SinglePrecision single) {
    return new CrossingProof(patch, edit, single::point)
        .fault(Proof.SINGLE_PRECISION, "in single precision ");
  }

  private Optional<Unsound> fault(Proof proof, String where) {
    int axis = axisOfLeastOverlap();
    long[] order = ascending(axis);
    for (int i = 0; i < order.length; i++) {
      int f = (int) order[i];
      for (int j = i + 1; j < order.length; j++) {
        int g = (int) order[j];
        if (floor(low[3 * g + axis]) > high[3 * f + axis]) {
          break;
        }
        if ((patch.isAdded(f) || patch.isAdded(g)) && boxesMeet(f, g) && crosses(f, g)) {
          Vec3 at = triangles[patch.isAdded(f) ? f : g].corner(0);
          return Fault.of(
              proof,
              "%s%s and %s meet where they must not, near (%.4f, %.4f, %.4f)",
              where,
              patch.name(f),
              patch.name(g),
              at.x(),
              at.y(),
              at.z());
        }
      }
    }
    return Optional.empty();
  }

  private boolean crosses(int f, int g) {
    return !triangles[f].isFlat()
        && !triangles[g].isFlat()
        && triangles[f].crosses(triangles[g])
        && !inherited(f, g);
  }

  /** True if what the two are cut from met in the same way before. */
  private boolean inherited(int f, int g) {
    int oldF = cutFrom(f);
    int oldG = cutFrom(g);
    return oldF >= 0
        && oldG >= 0
        && oldF != oldG
        && !triangles[oldF].isFlat()
        && !triangles[oldG].isFlat()
        && triangles[oldF].crosses(triangles[oldG]);
  }

  private int cutFrom(int facet) {
    if (!patch.isAdded(facet)) {
      return facet;
    }
    int index = patch.id(facet);
    return edit.onNewFace(index) ? -1 : Patch.indexOfRemoved(edit, edit.source(index));
  }

  private boolean boxesMeet(int f, int g) {
    for (int k = 0; k < 3; k++) {
      if (low[3 * f + k] > high[3 * g + k] || low[3 * g + k] > high[3 * f + k]) {
        return false;
      }
    }
    return true;
  }

  /** The axis along which the facets, laid one after the other, would reach the least far. */
  private int axisOfLeastOverlap() {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      double from = Double.POSITIVE_INFINITY;
      double to = Double.NEGATIVE_INFINITY;
      double sum = 0;
      for (int f = patch.firstAdded(); f < patch.facetCount(); f++) {
        from = Math.min(from, low[3 * f + k]);
        to = Math.max(to, high[3 * f + k]);
        sum += high[3 * f + k] - low[3 * f + k];
      }
      double overlap = to > from ? sum / (to - from) : Double.MAX_VALUE;
      if (overlap < least) {
        least = overlap;
        best = k;
      }
    }
    return best;
  }

  /** The facets after the edit by their lower bound, rounded down to a float in the upper half. */
  private long[] ascending(int axis) {
    long[] order = new long[patch.facetCount() - patch.firstAdded()];
    for (int k = 0; k < order.length; k++) {
      int f = patch.firstAdded() + k;
      int bits = Float.floatToIntBits(floor(low[3 * f + axis]));
      int ordered = bits >= 0 ? bits : bits ^ Integer.MAX_VALUE;
      order[k] = ((long) ordered << 32) | f;
    }
    Arrays.sort(order);
    return order;
  }

  private static float floor(double value) {
    float near = (float) value;
    return near <= value ? near + 0f : Math.nextDown(near); // adding +0 turns −0 into 0
  }
}
