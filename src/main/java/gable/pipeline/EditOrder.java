package gable.pipeline;

import gable.feature.Feature;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The order in which the features of one mesh are worked on. Larger ones come first, so that a
 * counterbore has its roof before the bore in it. Of one size, which matters where they cross, what
 * counts is what a turn of the part about z does not change: height, tilt, length, and how far they
 * are from the middle of the part. Features alike in all of that keep the order of their finding.
 *
 * <p>Print space, millimetres and radians. Cost: one walk over the points.
 */
final class EditOrder {

  /**
   * What differs by less than about this counts as equal, mm and radians: numbers are written in
   * steps of 1e-6 mm, drawings have sizes in hundredths, and half a step of this is neither.
   */
  private static final double SAME = 1e-3;

  private EditOrder() {}

  /** The features in the order of work. */
  static List<Feature> of(List<Feature> features, Mesh mesh) {
    Vec3 middle = middle(mesh);
    List<Feature> order = new ArrayList<>(features);
    order.sort(
        Comparator.<Feature>comparingDouble(feature -> -steps(feature.radius()))
            .thenComparingDouble(feature -> steps(feature.axis().origin().z()))
            .thenComparingDouble(feature -> steps(feature.tilt()))
            .thenComparingDouble(feature -> -steps(feature.length()))
            .thenComparingDouble(feature -> steps(feature.axis().origin().distance(middle)))
            .thenComparingDouble(feature -> steps(feature.axis().distance(middle))));
    return order;
  }

  private static double steps(double value) {
    return Math.rint(value / SAME);
  }

  private static Vec3 middle(Mesh mesh) {
    double x = 0;
    double y = 0;
    double z = 0;
    int count = mesh.vertexCount();
    for (int vertex = 0; vertex < count; vertex++) {
      Vec3 p = mesh.point(vertex);
      x += p.x() / count;
      y += p.y() / count;
      z += p.z() / count;
    }
    return new Vec3(x, y, z);
  }
}
