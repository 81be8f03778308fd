package gable.feature;

import gable.geom.Tolerances;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds the round bores of a part.
 *
 * <p>Input is a mesh in print space whose facets are oriented with the outside out and whose equal
 * points are one vertex; it should be closed, but open places elsewhere do no harm. Each wall grows
 * from a seed, a facet at a smooth concave edge; seeds are taken in an order that depends on the
 * points only, and a facet serves as a seed or lies near the middle of a failed patch a bounded
 * number of times, so the whole search is linear in the number of facets.
 *
 * <p>The result does not depend on the order of facets and vertices, up to their numbers.
 */
public final class FeatureFinder {

  /** A failed patch is not tried again from its inner part. */
  private static final int INNER_SHARE = 8;

  private final Surface surface;
  private final FacetStates states;
  private final WallMeasure measure;
  private final WallGrower grower;
  private final WallReader reader;
  private final List<Note> notes = new ArrayList<>();
  private final List<Bore.Builder> bores = new ArrayList<>();

  private FeatureFinder(Mesh mesh, HalfEdges halfEdges, Tolerances tolerances) {
    this.surface = new Surface(mesh, halfEdges);
    this.states = new FacetStates(mesh.facetCount());
    this.measure = new WallMeasure(surface);
    this.grower = new WallGrower(surface, tolerances, measure);
    this.reader = new WallReader(surface, grower.scratch(), notes);
  }

  /**
   * Finds all bores.
   *
   * @param printMesh the part in print space
   * @param halfEdges its half-edges
   * @param tolerances what rounding and noise may do
   */
  public static Findings find(Mesh printMesh, HalfEdges halfEdges, Tolerances tolerances) {
    var finder = new FeatureFinder(printMesh, halfEdges, tolerances);
    for (int seed : Seeds.of(finder.surface)) {
      if (finder.states.isFree(seed)) {
        finder.tryFrom(seed);
      }
    }
    return new Findings(BoreOrder.numbered(Coaxial.related(finder.bores)), finder.notes);
  }

  private void tryFrom(int seed) {
    Optional<WallModel> grown = grower.grow(seed, states);
    IndexSet facets = grower.facets();
    if (grown.isEmpty()) {
      states.tried(facets, facets.size() / INNER_SHARE + 1);
      return;
    }
    WallModel model = grown.get();
    Optional<Bore.Builder> bore =
        reader.read(facets, measure.corners(), model, grower.toleranceFor(model));
    if (bore.isPresent()) {
      states.wall(bore.get().wall);
      bores.add(bore.get());
    } else {
      states.tried(facets, facets.size());
    }
  }
}
