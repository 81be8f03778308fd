package gable.report;

import gable.mesh.Mesh;
import gable.pipeline.Settings;
import java.util.BitSet;
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
      Overhang one = of(shape, limit);
      before += places * one.before;
      after += places * one.after;
    }
    return new Overhang(before, after);
  }

  /** One object once; what a run leaves as it was is measured once for both. */
  private static Overhang of(Shape shape, double limit) {
    Mesh after = shape.after();
    double plate = plate(shape.before());
    if (plate(after) != plate) {
      return new Overhang(area(shape.before(), limit), area(after, limit));
    }
    BitSet removed = shape.removed();
    BitSet kept = (BitSet) removed.clone();
    kept.flip(0, shape.before().facetCount());
    double same = area(shape.before(), kept, limit, plate);
    return new Overhang(
        same + area(shape.before(), removed, limit, plate),
        same + area(after, shape.added(), limit, plate));
  }

  private static double area(Mesh mesh, BitSet facets, double limit, double plate) {
    return facets.stream().mapToDouble(facet -> area(mesh, facet, limit, plate)).sum();
  }

  /** Overhang of one mesh. */
  static double area(Mesh mesh, double limit) {
    double plate = plate(mesh);
    double sum = 0;
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      sum += area(mesh, facet, limit, plate);
    }
    return sum;
  }

  private static double plate(Mesh mesh) {
    return mesh.facetCount() == 0 ? 0 : mesh.box().min().z() + ON_PLATE;
  }

  /** Overhang of one facet; most face up and cost little. */
  private static double area(Mesh mesh, int facet, double limit, double plate) {
    int a = mesh.corner(facet, 0);
    int b = mesh.corner(facet, 1);
    int c = mesh.corner(facet, 2);
    double up =
        (mesh.x(b) - mesh.x(a)) * (mesh.y(c) - mesh.y(a))
            - (mesh.y(b) - mesh.y(a)) * (mesh.x(c) - mesh.x(a));
    if (up >= 0) {
      return 0;
    }
    double twice = mesh.facetNormal(facet).norm();
    boolean hangs = -up > Math.cos(limit - SLACK) * twice && !isOn(mesh, facet, plate);
    return hangs ? twice / 2 : 0;
  }

  private static boolean isOn(Mesh mesh, int facet, double plate) {
    return mesh.z(mesh.corner(facet, 0)) <= plate
        && mesh.z(mesh.corner(facet, 1)) <= plate
        && mesh.z(mesh.corner(facet, 2)) <= plate;
  }
}
