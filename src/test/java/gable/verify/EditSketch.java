package gable.verify;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import java.util.ArrayList;
import java.util.List;

/** An edit that can be spoilt. */
final class EditSketch {

  private final List<Integer> removed = new ArrayList<>();
  private final List<Vec3> points = new ArrayList<>();
  private final List<int[]> facets = new ArrayList<>();
  private final List<Integer> sources = new ArrayList<>();
  private final List<Boolean> onNewFace = new ArrayList<>();

  EditSketch() {}

  EditSketch(MeshEdit edit) {
    for (int k = 0; k < edit.removedCount(); k++) {
      removed.add(edit.removed(k));
    }
    for (int k = 0; k < edit.pointCount(); k++) {
      points.add(new Vec3(edit.coordinate(k, 0), edit.coordinate(k, 1), edit.coordinate(k, 2)));
    }
    for (int k = 0; k < edit.facetCount(); k++) {
      facet(
          edit.corner(k, 0),
          edit.corner(k, 1),
          edit.corner(k, 2),
          edit.source(k),
          edit.onNewFace(k));
    }
  }

  List<Integer> removed() {
    return removed;
  }

  List<Vec3> points() {
    return points;
  }

  List<int[]> facets() {
    return facets;
  }

  List<Integer> sources() {
    return sources;
  }

  EditSketch facet(int a, int b, int c, int source, boolean newFace) {
    facets.add(new int[] {a, b, c});
    sources.add(source);
    onNewFace.add(newFace);
    return this;
  }

  EditSketch drop(int facet) {
    facets.remove(facet);
    sources.remove(facet);
    onNewFace.remove(facet);
    return this;
  }

  EditSketch flip(int facet) {
    int[] corners = facets.get(facet);
    int second = corners[1];
    corners[1] = corners[2];
    corners[2] = second;
    return this;
  }

  EditSketch move(int point, Vec3 by) {
    points.set(point, points.get(point).plus(by));
    return this;
  }

  EditSketch rename(int vertex, int other) {
    for (int[] corners : facets) {
      for (int k = 0; k < 3; k++) {
        corners[k] = corners[k] == vertex ? other : corners[k];
      }
    }
    return this;
  }

  MeshEdit edit() {
    double[] xyz = new double[3 * points.size()];
    for (int k = 0; k < points.size(); k++) {
      xyz[3 * k] = points.get(k).x();
      xyz[3 * k + 1] = points.get(k).y();
      xyz[3 * k + 2] = points.get(k).z();
    }
    int[] corners = new int[3 * facets.size()];
    boolean[] flags = new boolean[facets.size()];
    for (int k = 0; k < flags.length; k++) {
      System.arraycopy(facets.get(k), 0, corners, 3 * k, 3);
      flags[k] = onNewFace.get(k);
    }
    return new MeshEdit(
        removed.stream().mapToInt(Integer::intValue).toArray(),
        xyz,
        corners,
        sources.stream().mapToInt(Integer::intValue).toArray(),
        flags);
  }
}
