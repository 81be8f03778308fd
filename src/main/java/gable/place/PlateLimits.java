package gable.place;

import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Vec3;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import gable.threemf.MeshObject;
import gable.threemf.ModelLimits;
import java.util.IdentityHashMap;
import java.util.Optional;

/**
 * How far meshes may reach on the plate, and how much there may be to look at. A mesh is looked at
 * once for each direction in which it lies, so that a small file can ask for endless work.
 */
final class PlateLimits {

  /** Far more than anybody lays one object; a choice of our own. */
  private static final int MOST_WAYS = 1_000;

  private final ModelLimits limits;
  private final IdentityHashMap<MeshObject, Box3> boxes = new IdentityHashMap<>();
  private long facets;

  PlateLimits(ModelLimits limits) {
    this.limits = limits;
  }

  /** Why a mesh cannot be placed so, if it cannot. */
  Optional<Problem> tooFar(MeshObject mesh, Affine3 toPrint) {
    Box3 box = boxes.computeIfAbsent(mesh, key -> key.mesh().box());
    double reach = 0;
    for (int corner = 0; corner < 8; corner++) {
      Vec3 p =
          new Vec3(
              ((corner & 1) == 0 ? box.min() : box.max()).x(),
              ((corner & 2) == 0 ? box.min() : box.max()).y(),
              ((corner & 4) == 0 ? box.min() : box.max()).z());
      Vec3 q = toPrint.apply(p);
      // Math.max keeps a NaN, which comes where infinities meet and is too far as well
      reach =
          Math.max(reach, Math.max(Math.abs(q.x()), Math.max(Math.abs(q.y()), Math.abs(q.z()))));
    }
    if (reach <= limits.coordinate()) {
      return Optional.empty();
    }
    String found = "a place that reaches to " + reach + " mm";
    return Optional.of(
        problem(mesh, PlaceRules.RANGE, found, "at most " + (long) limits.coordinate()));
  }

  /** Why a mesh cannot lie one more way up, if it cannot; counts it if it can. */
  Optional<Problem> tooMany(MeshObject mesh, int ways) {
    if (ways >= MOST_WAYS) {
      String found = "an object that lies more than " + MOST_WAYS + " ways up";
      return Optional.of(problem(mesh, PlaceRules.WAYS, found, "at most " + MOST_WAYS));
    }
    facets += mesh.mesh().facetCount();
    if (facets > limits.triangles()) {
      String found = facets + " triangles to look at, each in every direction in which it lies";
      return Optional.of(problem(mesh, PlaceRules.COUNT, found, "at most " + limits.triangles()));
    }
    return Optional.empty();
  }

  private static Problem problem(MeshObject mesh, Rule rule, String found, String expected) {
    Place place = Place.of(mesh.part()).at("model/resources/object " + mesh.id());
    return new Problem(rule, place, found, expected);
  }
}
