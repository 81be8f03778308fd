package gable.feature;

import gable.geom.Tolerances;
import gable.mesh.Aside;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Finds the round bores of a part, and its pins ({@link PinFinder}).
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

  /**
   * Height of a needle over the noise: corners that stray by a sixth of the noise that a wall may
   * have, its standard deviation, then turn two needles against each other by 5.8 degrees (standard
   * deviation of three corners, √6 / 24), and four times that is still smooth.
   */
  private static final double NEEDLE = 4;

  private final Surface surface;
  private final FacetStates states;
  private final WallMeasure measure;
  private final WallGrower grower;
  private final WallReader reader;
  private final List<Note> notes = new ArrayList<>();
  private final List<Bore.Builder> bores = new ArrayList<>();
  private final List<Bore.Builder> partial = new ArrayList<>();

  private long wasted;

  private FeatureFinder(Mesh mesh, HalfEdges halfEdges, Tolerances tolerances) {
    // rounding by g turns a facet of height b by 2 g / b: above a quarter of a radian it is a
    // sliver
    this.surface =
        new Surface(mesh, halfEdges, 8 * tolerances.coordinateGrid(), tolerances.noise());
    this.states = new FacetStates(mesh.facetCount());
    this.measure = new WallMeasure(surface);
    this.grower = new WallGrower(surface, tolerances, measure);
    this.reader = new WallReader(surface, grower.scratch(), notes);
  }

  /**
   * Finds all bores, then all pins.
   *
   * @param printMesh the part in print space
   * @param halfEdges its half-edges
   * @param tolerances what rounding and noise may do
   */
  public static Findings find(Mesh printMesh, HalfEdges halfEdges, Tolerances tolerances) {
    return find(printMesh, halfEdges, tolerances, Aside.NOBODY);
  }

  /**
   * The same, perhaps with help: the search for pins goes on beside that for bores, and on large
   * parts a scout looks ahead. The result is the same.
   */
  public static Findings find(
      Mesh printMesh, HalfEdges halfEdges, Tolerances tolerances, Aside aside) {
    var finder = new FeatureFinder(printMesh, halfEdges, tolerances);
    Supplier<List<Pin>> pins = aside.start(() -> PinFinder.find(finder.surface, tolerances));
    Hollows hollows = finder.search(tolerances, Long.MAX_VALUE, aside);
    ThreadFinder.search(finder.surface, hollows, finder.states, finder.bores);
    List<Bore.Builder> sorted = BoreOrder.sorted(finder.bores);
    Coaxial.relate(sorted);
    List<Feature> features = new ArrayList<>(BoreOrder.named(sorted));
    features.addAll(pins.get());
    return new Findings(features, finder.notes);
  }

  /**
   * The round walls of a mesh, read as those of bores.
   *
   * @param budget facets of failed walls that may be looked at, counted each time; the search ends
   *     there, with the seeds at long bends done
   */
  static List<Bore> bores(Mesh mesh, HalfEdges halfEdges, Tolerances tolerances, long budget) {
    var finder = new FeatureFinder(mesh, halfEdges, tolerances);
    finder.search(tolerances, budget, Aside.NOBODY);
    return finder.bores.stream().map(Bore::new).toList();
  }

  private Hollows search(Tolerances tolerances, long budget, Aside aside) {
    Hollows hollows = Hollows.of(surface, NEEDLE * tolerances.noise());
    int[] seeds = Seeds.of(surface, hollows);
    Scout scout = new Scout(surface, tolerances, states, seeds);
    if (aside.helps() && seeds.length >= Scout.WORTH_IT) {
      aside.start(scout.work());
    }
    try {
      for (int at = 0; at < seeds.length; at++) {
        if (states.isFree(seeds[at]) && wasted < budget) {
          tryFrom(seeds[at], scout.ahead(at));
        }
      }
    } finally {
      scout.end();
    }
    addPartial();
    return hollows;
  }

  private void tryFrom(int seed, Optional<Scout.Miss> ahead) {
    if (ahead.isPresent()) {
      giveUp(seed, ahead.get());
    } else {
      tryFrom(seed);
    }
  }

  private void tryFrom(int seed) {
    Optional<WallModel> grown = grower.grow(seed, states);
    IndexSet facets = grower.facets();
    if (grown.isEmpty()) {
      giveUp(seed);
      return;
    }
    WallModel model = grown.get();
    boolean isCylinder =
        grower.isCylinder(model) && Lean.isUpright(surface, facets, model.cylinder());
    Optional<Bore.Builder> bore =
        reader.read(facets, measure.corners(), model, grower.toleranceFor(model), isCylinder);
    if (bore.isEmpty()) {
      giveUp(seed);
      states.failed(facets, FacetStates.SURE);
    } else if (bore.get().shape == BoreShape.PARTIAL) {
      partial.add(bore.get()); // another seed may show more of it
      giveUp(seed);
      states.failed(facets, 1);
    } else {
      states.wall(bore.get().wall);
      bores.add(bore.get());
    }
  }

  /** Adds those partial walls, the most complete first, of which no facet belongs to a wall yet. */
  private void addPartial() {
    partial.sort(
        Comparator.comparingDouble((Bore.Builder b) -> -b.coveredAngle)
            .thenComparingInt(b -> -b.wall.length));
    for (Bore.Builder builder : partial) {
      if (Arrays.stream(builder.wall).noneMatch(states::isWall)) {
        states.wall(builder.wall);
        bores.add(builder);
      }
    }
  }

  private void giveUp(int seed) {
    giveUp(seed, Scout.Miss.of(states.epoch(), grower));
  }

  /** Takes the seed and the facets nearest to it out of use. */
  private void giveUp(int seed, Scout.Miss miss) {
    wasted += miss.looked();
    states.tried(seed);
    for (int facet : miss.core()) {
      states.tried(facet);
    }
  }
}
