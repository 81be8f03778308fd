package gable.feature;

import gable.geom.Tolerances;
import java.util.List;
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

  /**
   * A failed patch is not tried again from its inner part, a third of it: every wall has seeds
   * nearer to its middle. Found by trial: of 4,486 models by chance none came out otherwise than
   * with an eighth.
   */
  private static final int INNER_SHARE = 3;

  /** Size from which a patch has corners and bends enough that its scatter can be believed. */
  private static final int SCATTERED = 64;

  /** Size from which a growing wall must be hollow, again each time it has doubled. */
  private static final int SPREAD = 128;

  /**
   * Share of concave bends over convex ones from which a small patch is worth measuring: that of a
   * wall without noise. What chance makes of some twenty facets tells little, and is measured when
   * the patch is larger.
   */
  private static final double CLEARLY_HOLLOW = 0.9;

  /** Share below which a patch of some size is rough or wavy, and no wall. */
  private static final double LEAST_HOLLOW = 0.15;

  private static final int FIRST_PATCH = 16;
  private static final int LARGEST_PATCH = 2048;

  /** A patch tells a circle when its arc rises this many times as far as its corners scatter. */
  private static final double CLEAR = 8;

  /** Rounds without growth; a wall that still changes then is borderline anyway. */
  private static final int MOST_SETTLING = 10;

  private static final double ALMOST_FULL = Math.toRadians(345);

  private static final int FEWEST = 8;

  private static final List<Patch.Way> USUAL = List.of(Patch.Way.ALONG, Patch.Way.ANY);
  private static final List<Patch.Way> STRICT = List.of(Patch.Way.STRICTLY_ALONG);

  private final Surface surface;
  private final Tolerances tolerances;
  private final WallMeasure measure;
  private final IndexSet facets;
  private final IndexSet grown;
  private final Patch patch;
  private WallModel model = WallModel.NONE;
  private int core;
  private Start told = Start.UNCLEAR;

  WallGrower(Surface surface, Tolerances tolerances, WallMeasure measure) {
    this.surface = surface;
    this.tolerances = tolerances;
    this.measure = measure;
    this.facets = new IndexSet(surface.facetCount());
    this.grown = new IndexSet(surface.facetCount());
    this.patch = new Patch(surface, facets);
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

  /**
   * How many of the facets of the last patch lay so near to its seed that they would do no better.
   */
  int core() {
    return core;
  }

  /** Facets of the last patch or wall, nearest to the seed first. */
  IndexSet facets() {
    return facets;
  }

  /** Finds the wall around a seed; facets that belong to other walls are left alone. */
  Optional<WallModel> grow(int seed, FacetStates states) {
    Optional<WallModel> wall = begins(seed, states, USUAL) ? spread(states) : Optional.empty();
    if (wall.filter(this::isCylinder).isPresent() || !isWorthMore()) {
      return wall;
    }
    int[] failed = facets.toArray();
    int nearest = core;
    Optional<WallModel> other = begins(seed, states, STRICT) ? spread(states) : Optional.empty();
    if (other.isEmpty()) {
      putBack(failed, nearest);
    }
    return other.or(() -> wall.map(first -> measure.again(facets, first)));
  }

  /**
   * False if no wall begins at a seed whichever way; then it leaves what {@link #grow} would leave.
   */
  boolean begins(int seed, FacetStates states) {
    if (begins(seed, states, USUAL) || !isWorthMore()) {
      return told == Start.CLEAR;
    }
    int[] failed = facets.toArray();
    int nearest = core;
    boolean other = begins(seed, states, STRICT);
    if (!other) {
      putBack(failed, nearest);
    }
    return other;
  }

  /** Leaves what failed first: it is the larger, and is what must not be tried again. */
  private void putBack(int[] failed, int nearest) {
    facets.set(failed, failed.length);
    core = nearest;
  }

  /** Takes the patch around a seed; true if it tells a circle, from which a wall may grow. */
  private boolean begins(int seed, FacetStates states, List<Patch.Way> ways) {
    Start start = Start.UNCLEAR;
    for (int k = 0; k < ways.size() && start == Start.UNCLEAR; k++) {
      patch.start(seed, ways.get(k));
      start = start(states);
    }
    told = start;
    core = patch.inner(INNER_SHARE);
    return start == Start.CLEAR;
  }

  /** True if another patch may do better: not on a rough surface, where most seeds are tried. */
  private boolean isWorthMore() {
    return told != Start.NO_WALL && patch.isCoarse();
  }

  /** What a patch tells. */
  private enum Start {
    /** A circle. */
    CLEAR,
    /** Nothing, or nothing good. */
    UNCLEAR,
    /** That the surface is rough, waves or bends two ways here. */
    NO_WALL
  }

  /** Extends the patch until it tells a circle, which is left in {@code model}. */
  private Start start(FacetStates states) {
    for (int limit = FIRST_PATCH; limit <= LARGEST_PATCH; limit *= 2) {
      boolean more = patch.extend(limit, states);
      double hollow = patch.bends().hollowness();
      boolean large = facets.size() >= SCATTERED;
      if (large && (hollow < LEAST_HOLLOW || patch.bends().isTwofold(facets.size()))) {
        return Start.NO_WALL;
      }
      if (hollow >= CLEARLY_HOLLOW || large || !more) {
        Optional<WallModel> measured = measure.fresh(facets);
        if (measured.isPresent()) {
          model = measured.get();
          if (isClear(model)) {
            return Start.CLEAR;
          }
          if (isHopeless(model) || (large && (isScattered(model) || !isCylinder(model)))) {
            return Start.UNCLEAR;
          }
        }
      }
      if (!more) {
        return Start.UNCLEAR;
      }
    }
    return Start.UNCLEAR;
  }

  private boolean isClear(WallModel model) {
    return model.corners() >= 8
        && model.clarity() >= CLEAR
        && model.rms() <= mostNoise(model.cylinder().radius())
        && isCylinder(model);
  }

  /** True if the corners measured last lie on the model's cylinder but for noise. */
  boolean isCylinder(WallModel measured) {
    double radius = measured.cylinder().radius();
    return measure.isCylinder(measured.cylinder(), negligible(radius));
  }

  /** Form that is smaller than this, in millimetres, does not matter. */
  private double negligible(double radius) {
    return Math.max(leastNoise(), 0.05 * mostNoise(radius));
  }

  /**
   * The least squares of a patch on a wall scatter no more than the wall, however little of it the
   * patch shows; on a surface that only waves they scatter as it waves.
   */
  private boolean isScattered(WallModel model) {
    return model.rms() > 2 * mostNoise(model.cylinder().radius());
  }

  /** A patch over a third of a turn that still scatters by half its rise is no cylinder. */
  private boolean isHopeless(WallModel model) {
    return model.extent() > Math.PI / 3
        && model.clarity() < 2
        && model.rms() > mostNoise(model.cylinder().radius());
  }

  private Optional<WallModel> spread(FacetStates states) {
    double tolerance = toleranceFor(model);
    long before = 0;
    int settled = 0;
    int largest = 0;
    int next = SPREAD;
    double least = 0;
    while (settled < MOST_SETTLING) {
      var test = new WallTest(surface, model.cylinder(), tolerance, model.facetAngle());
      if (!accept(test)) {
        return Optional.empty();
      }
      boolean done = flood(test, Math.max(64, 2 * grown.size()), states);
      facets.set(grown.items(), grown.size());
      if (facets.size() >= next) {
        next = 2 * facets.size();
        if (patch.hollowness() < LEAST_HOLLOW) {
          core = facets.size() / INNER_SHARE;
          return Optional.empty();
        }
      }
      long hash = hash();
      if (done && hash == before) {
        if (tolerance >= mostNoise(model.cylinder().radius()) || !isOpenAndNoisy(model)) {
          break;
        }
        least = mostNoise(model.cylinder().radius());
      }
      settled += done || grown.size() <= largest ? 1 : 0;
      largest = Math.max(largest, grown.size());
      before = hash;
      model = measure.again(facets, model);
      if (facets.size() >= SCATTERED && !isCylinder(model)) {
        break; // more of it will not be rounder
      }
      tolerance = Math.max(least, toleranceFor(model));
    }
    dropLooseSlivers();
    return facets.size() < FEWEST ? Optional.empty() : Optional.of(model);
  }

  /** Starts the grown wall with the facets that pass; false if they are too few. */
  private boolean accept(WallTest test) {
    grown.clear();
    for (int k = 0; k < facets.size(); k++) {
      if (test.accepts(facets.get(k))) {
        grown.add(facets.get(k));
      }
    }
    return grown.size() >= FEWEST;
  }

  /**
   * Takes out slivers that have less than two true neighbours in the wall: they lie between its end
   * and something else, or lead from needle to needle into another surface.
   */
  private void dropLooseSlivers() {
    boolean changed = true;
    while (changed) {
      grown.clear();
      for (int k = 0; k < facets.size(); k++) {
        int facet = facets.get(k);
        if (!surface.isSliver(facet) || neighbours(facet) >= 2) {
          grown.add(facet);
        }
      }
      changed = grown.size() < facets.size();
      facets.set(grown.items(), grown.size());
    }
  }

  /**
   * Those in the wall that hold a sliver: true facets, and another sliver across a long side that
   * such a facet holds, since where the grid is coarse two may lie side by side along a ruling.
   */
  private int neighbours(int facet) {
    int count = 0;
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      int other = surface.beyond(h);
      if (other >= 0 && facets.contains(other)) {
        boolean holds = !surface.isSliver(other) || isLong(h) && hasTrueNeighbour(other);
        count += holds ? 1 : 0;
      }
    }
    return count;
  }

  private boolean hasTrueNeighbour(int sliver) {
    for (int h = 3 * sliver; h < 3 * sliver + 3; h++) {
      int other = surface.beyond(h);
      if (other >= 0 && facets.contains(other) && !surface.isSliver(other)) {
        return true;
      }
    }
    return false;
  }

  /** True if a half-edge is more than half as long as the longest side of its facet. */
  private boolean isLong(int halfEdge) {
    int first = halfEdge - halfEdge % 3;
    double longest = surface.length(first);
    longest = Math.max(longest, Math.max(surface.length(first + 1), surface.length(first + 2)));
    return surface.length(halfEdge) > longest / 2;
  }

  /** Few corners may tell too little of the noise, and one far corner then stops the growth. */
  private boolean isOpenAndNoisy(WallModel model) {
    return model.extent() < ALMOST_FULL && model.noise() > leastNoise();
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
              && !states.isBarred(other)
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
