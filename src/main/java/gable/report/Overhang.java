package gable.report;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.pipeline.Settings;
import java.util.List;

/**
 * Area that hangs in the air: facets that face down and are flatter than the slope limit, but for
 * those that lie on the plate. Each object is taken to stand on the plate with its lowest point.
 *
 * <p>A facet counts from a tenth of a degree below the limit on, because rounded coordinates tilt
 * small facets of a roof that is laid at the limit exactly. The area is that of the facets, in
 * square millimetres, over all places of all objects.
 *
 * @param before before the run
 * @param after after it
 */
public record Overhang(double before, double after) {

  private static final double SLACK = Math.toRadians(0.1);

  /** Facets whose corners are this near to the lowest point lie on the plate, in millimetres. */
  private static final double ON_PLATE = 1e-3;

  /** Overhang of all objects, by the slope limit of the settings. */
  public static Overhang of(List<Shape> shapes, Settings settings) {
    double limit = settings.limits().slope();
    double before = 0;
    double after = 0;
    for (Shape shape : shapes) {
      int places = shape.places().size();
      double old = area(shape.before(), limit);
      before += places * old;
      after += places * (shape.edit().isEmpty() ? old : area(shape.after(), limit));
    }
    return new Overhang(before, after);
  }

  /** Overhang of one mesh. */
  static double area(Mesh mesh, double limit) {
    double steepest = Math.cos(limit - SLACK);
    double plate = mesh.facetCount() == 0 ? 0 : mesh.box().min().z() + ON_PLATE;
    double sum = 0;
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      Vec3 normal = mesh.facetNormal(facet);
      double twice = normal.norm();
      if (-normal.z() > steepest * twice && !isOn(mesh, facet, plate)) {
        sum += twice / 2;
      }
    }
    return sum;
  }

  private static boolean isOn(Mesh mesh, int facet, double plate) {
    return mesh.z(mesh.corner(facet, 0)) <= plate
        && mesh.z(mesh.corner(facet, 1)) <= plate
        && mesh.z(mesh.corner(facet, 2)) <= plate;
  }
}
