package gable.feature;

import gable.geom.Tolerances;
import java.util.Optional;

/**
 * Grows round walls from seeds. Around the seed a patch is taken, level by level, until its corners
 * tell a circle clearly; then facets that fit the cylinder are added and the cylinder is measured
 * again each time their number has doubled, until nothing changes.
 *
 * <p>What comes out depends on the mesh only, not on the order of its facets: patches and growth
 * stop between levels, never inside one, and the last cylinder is measured on all of the wall.
 */
final class WallGrower {

  /** Sharpest concave edge inside a patch: an octagon turns by 45 degrees. */
  static final double SHARPEST = Math.toRadians(46);

  /** Sharpest convex edge inside a patch: noise on slivers, but no chamfered mouth. */
  private static final double MOST_CONVEX = Math.toRadians(25);

  private static final int FIRST_PATCH = 16;
  private static final int LARGEST_PATCH = 2048;

  /** A patch tells a circle when its arc rises this many times as far as its corners scatter. */
  private static final double CLEAR = 8;

  private static final int MOST_ROUNDS = 60;

  private final Surface surface;
  private final Tolerances tolerances;
  private final WallMeasure measure;
  private final IndexSet facets;
  private final IndexSet grown;
  private int head;
  private int levelEnd;

  WallGrower(Surface surface, Tolerances tolerances, WallMeasure measure) {
    this.surface = surface;
    this.tolerances = tolerances;
    this.measure = measure;
    this.facets = new IndexSet(surface.facetCount());
    this.grown = new IndexSet(surface.facetCount());
  }

  /** Largest distance of a corner from a wall of this radius; small bores bear less. */
  double mostNoise(double radius) {
    return Math.max(leastNoise(), Math.min(tolerances.noise(), 0.02 * radius));
  }

  /** What rounding of coordinates alone may do: half a step in each of three coordinates. */
  double leastNoise() {
    return 2 * tolerances.coordinateGrid();
  }

  /** A set that nobody uses between two calls of {@link #grow}. */
  IndexSet scratch() {
    return grown;
  }

  /** Facets of the last patch or wall, nearest to the seed first. */
  IndexSet facets() {
    return facets;
  }

  /** Finds the wall around a seed; facets that belong to other walls are left alone. */
  Optional<WallModel> grow(int seed, FacetStates states) {
    Optional<WallModel> patch = patch(seed, states);
    if (patch.isEmpty()) {
      return patch;
    }
    return spread(patch.get(), states);
  }

  private Optional<WallModel> patch(int seed, FacetStates states) {
    facets.clear();
    facets.add(seed);
    head = 0;
    for (int limit = FIRST_PATCH; limit <= LARGEST_PATCH; limit *= 2) {
      boolean more = extend(limit, states);
      Optional<WallModel> model = measure.fresh(facets);
      if (model.isPresent()) {
        WallModel found = model.get();
        if (isClear(found)) {
          return model;
        }
        if (isHopeless(found)) {
          return Optional.empty();
        }
      }
      if (!more) {
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  private boolean isClear(WallModel model) {
    return model.corners() >= 8
        && model.clarity() >= CLEAR
        && model.rms() <= mostNoise(model.cylinder().radius());
  }

  /** A patch over a third of a turn that still scatters by half its rise is no cylinder. */
  private boolean isHopeless(WallModel model) {
    return model.extent() > Math.PI / 3
        && model.clarity() < 2
        && model.rms() > mostNoise(model.cylinder().radius());
  }

  /** Adds whole levels of smooth neighbours up to the limit; false if there are no more. */
  private boolean extend(int limit, FacetStates states) {
    while (facets.size() < limit) {
      levelEnd = facets.size();
      if (head == levelEnd) {
        return false;
      }
      for (; head < levelEnd; head++) {
        int facet = facets.get(head);
        for (int h = 3 * facet; h < 3 * facet + 3; h++) {
          int other = surface.across(h);
          if (other >= 0 && !facets.contains(other) && !states.isWall(other)) {
            double turn = surface.turn(h);
            if (turn <= SHARPEST && turn >= -MOST_CONVEX) {
              facets.add(other);
            }
          }
        }
      }
    }
    return true;
  }

  private Optional<WallModel> spread(WallModel start, FacetStates states) {
    WallModel model = start;
    double tolerance = toleranceFor(model);
    int before = -1;
    long hashBefore = 0;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      var test = new WallTest(surface, model.cylinder(), tolerance, model.step());
      grown.clear();
      for (int k = 0; k < facets.size(); k++) {
        if (test.accepts(facets.get(k))) {
          grown.add(facets.get(k));
        }
      }
      if (grown.size() < 8) {
        return Optional.empty();
      }
      boolean done = flood(test, Math.max(64, 2 * grown.size()), states);
      facets.set(grown.items(), grown.size());
      long hash = hash();
      if (done && facets.size() == before && hash == hashBefore) {
        return Optional.of(model);
      }
      before = facets.size();
      hashBefore = hash;
      model = measure.again(facets, model);
      tolerance = toleranceFor(model);
    }
    return Optional.of(model);
  }

  /** Six standard deviations, within what rounding does at least and noise may do at most. */
  double toleranceFor(WallModel model) {
    double most = mostNoise(model.cylinder().radius());
    return Math.min(most, Math.max(leastNoise(), 6 * model.noise()));
  }

  /**
   * Adds accepted neighbours in whole levels up to the limit; true if nothing more can be added.
   */
  private boolean flood(WallTest test, int limit, FacetStates states) {
    int at = 0;
    while (at < grown.size()) {
      if (grown.size() >= limit) {
        return false;
      }
      int end = grown.size();
      for (; at < end; at++) {
        int facet = grown.get(at);
        for (int h = 3 * facet; h < 3 * facet + 3; h++) {
          int other = surface.across(h);
          if (other >= 0
              && !grown.contains(other)
              && !states.isWall(other)
              && test.accepts(other)) {
            grown.add(other);
          }
        }
      }
    }
    return true;
  }

  private long hash() {
    long sum = 0;
    for (int k = 0; k < facets.size(); k++) {
      long mixed = facets.get(k) * 0x9E3779B97F4A7C15L;
      sum += mixed ^ (mixed >>> 29);
    }
    return sum;
  }
}
