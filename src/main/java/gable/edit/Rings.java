package gable.edit;

import gable.geom.Vec3;
import gable.section.FlatPolygon;
import gable.section.FlatPolygon.Corner;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Rings of numbered corners, after points have been merged. */
final class Rings {

  private Rings() {}

  /**
   * Splits a ring where it runs through a corner again, and drops what has fewer than three
   * corners: a side that runs there and back encloses nothing.
   */
  static List<List<Corner>> simple(List<Corner> ring) {
    List<List<Corner>> simple = new ArrayList<>();
    List<Corner> path = new ArrayList<>();
    Map<Integer, Integer> at = new HashMap<>();
    for (Corner corner : ring) {
      Integer before = at.get(corner.id());
      if (before != null) {
        List<Corner> closed = path.subList(before, path.size());
        keep(closed, simple);
        closed.forEach(gone -> at.remove(gone.id()));
        closed.clear();
      }
      at.put(corner.id(), path.size());
      path.add(corner);
    }
    keep(path, simple);
    return simple;
  }

  private static void keep(List<Corner> ring, List<List<Corner>> simple) {
    if (ring.size() >= 3) {
      simple.add(new ArrayList<>(ring));
    }
  }

  /** Index of the smallest of {@code outers} that surrounds a ring, or −1. */
  static int smallestAround(List<Corner> ring, List<List<Corner>> outers, Vec3 normal) {
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < outers.size(); k++) {
      double area = FlatPolygon.area(outers.get(k), normal);
      if (area < least && FlatPolygon.surrounds(outers.get(k), normal, ring.get(0).point())) {
        least = area;
        best = k;
      }
    }
    return best;
  }
}
