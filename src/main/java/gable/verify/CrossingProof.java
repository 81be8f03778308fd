package gable.verify;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;

/**
 * No new facet meets another but in their common corners and edges, in print space and in single
 * precision. A meeting that the facets from which the two are cut had already is not held against
 * them.
 *
 * <p>A sweep along one axis finds the pairs whose boxes meet.
 */
final class CrossingProof {

  private final Patch patch;
  private final MeshEdit edit;
  private final Triangle[] triangles;
  private final double[] low;
  private final double[] high;

  private CrossingProof(Patch patch, MeshEdit edit, IntFunction<Vec3> place) {
    this.patch = patch;
    this.edit = edit;
    int count = patch.facetCount();
    int[] named = named(patch, place);
    this.triangles = new Triangle[count];
    this.low = new double[3 * count];
    this.high = new double[3 * count];
    for (int f = 0; f < count; f++) {
      int a = patch.corner(f, 0);
      int b = patch.corner(f, 1);
      int c = patch.corner(f, 2);
      triangles[f] =
          new Triangle(
              named[a], named[b], named[c], place.apply(a), place.apply(b), place.apply(c));
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
   * A name for each vertex. Old vertices at one place have one name: what borders on one of them
   * borders on the other, as it did before the edit (some producers write such pairs, joined by
   * facets without area). New vertices have names of their own, wherever they are.
   */
  private static int[] named(Patch patch, IntFunction<Vec3> place) {
    Map<Vec3, Integer> first = new HashMap<>();
    int[] named = new int[patch.vertexCount()];
    for (int vertex = 0; vertex < named.length; vertex++) {
      int v = vertex;
      named[v] = v;
      if (!patch.isNewVertex(v)) {
        named[v] = first.computeIfAbsent(place.apply(v).plus(Vec3.ZERO), any -> v); // −0 is 0
      }
    }
    return named;
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
