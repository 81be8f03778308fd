package gable.feature;

import gable.geom.Tolerances;
import java.util.Arrays;
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

  static final double LEAST_COSINE = Math.cos(SHARPEST);
  private static final double LEAST_CONVEX_COSINE = Math.cos(MOST_CONVEX);

  /** Inside a strip the surface turns by less than this share of the bend between strips. */
  private static final double FLAT_SHARE = 0.15;

  /** Cosine of the largest angle between two bends of one prismatic wall: 15 degrees. */
  private static final double ALONG = Math.cos(Math.toRadians(15));

  /** A failed patch is not tried again from its inner part, an eighth of it. */
  private static final int INNER_SHARE = 8;

  /** Size from which a patch has corners and bends enough that its scatter can be believed. */
  private static final int SCATTERED = 64;

  /**
   * Share of concave bends over convex ones from which a small patch is worth measuring. A wall
   * with 10 micrometres of noise on facets of a quarter of a millimetre has about 0.4; less is
   * measured when the patch is larger.
   */
  private static final double CLEARLY_HOLLOW = 0.4;

  /** Share below which a patch of some size is rough or wavy, and no wall. */
  private static final double LEAST_HOLLOW = 0.15;

  /** Of a wavy patch this part, around the seed, is not tried again. */
  private static final int WAVY_SHARE = 3;

  private static final int FIRST_PATCH = 16;
  private static final int LARGEST_PATCH = 2048;

  /** A patch tells a circle when its arc rises this many times as far as its corners scatter. */
  private static final double CLEAR = 8;

  /** Rounds without growth; a wall that still changes then is borderline anyway. */
  private static final int MOST_SETTLING = 10;

  private static final double ALMOST_FULL = Math.toRadians(345);

  private static final int FEWEST = 8;

  private final Surface surface;
  private final Tolerances tolerances;
  private final WallMeasure measure;
  private final IndexSet facets;
  private final IndexSet grown;
  private int[] references = new int[256];
  private int bendFrom;
  private int bendTo;
  private int head;
  private int[] levelEnds = new int[64];
  private int levels;
  private int core;
  private boolean waves;
  private double flatCosine;

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
    bendFrom = seed;
    bendTo = Seeds.sharpestBend(surface, seed);
    flatCosine = Math.cos(FLAT_SHARE * surface.turn(bendFrom, bendTo));
    waves = false;
    Optional<WallModel> patch = patch(seed, states, true);
    if (patch.isEmpty() && !waves) {
      patch = patch(seed, states, false);
    }
    core = innerLevels();
    return patch.isPresent() ? spread(patch.get(), states) : patch;
  }

  /** Size of the levels that make up the inner part of the patch, at least the seed. */
  private int innerLevels() {
    int size = 1;
    int most = facets.size() / (waves ? WAVY_SHARE : INNER_SHARE);
    for (int level = 0; level < levels && levelEnds[level] <= most; level++) {
      size = levelEnds[level];
    }
    return size;
  }

  /**
   * Collects facets around the seed until they tell a circle.
   *
   * @param along cross bends only if they run along the bend at the seed: right for a prismatic
   *     wall, and keeps the patch out of a cone or rounding at its end
   */
  private Optional<WallModel> patch(int seed, FacetStates states, boolean along) {
    facets.clear();
    facets.add(seed);
    remember(seed, seed);
    head = 0;
    levels = 0;
    for (int limit = FIRST_PATCH; limit <= LARGEST_PATCH; limit *= 2) {
      boolean more = extend(limit, states, along);
      double hollow = hollowness();
      if (facets.size() >= SCATTERED && hollow < LEAST_HOLLOW) {
        waves = true;
        return Optional.empty();
      }
      if (hollow >= CLEARLY_HOLLOW || facets.size() >= SCATTERED || !more) {
        Optional<WallModel> model = measure.fresh(facets);
        if (model.isPresent()) {
          WallModel found = model.get();
          if (isClear(found)) {
            return model;
          }
          if (isHopeless(found) || (facets.size() >= SCATTERED && isScattered(found))) {
            return Optional.empty();
          }
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
        && model.rms() <= mostNoise(model.cylinder().radius())
        && measure.isCylinder(model.cylinder(), negligible(model.cylinder().radius()));
  }

  /** Form that is smaller than this, in millimetres, does not matter. */
  double negligible(double radius) {
    return Math.max(leastNoise(), 0.05 * mostNoise(radius));
  }

  /**
   * How much more the patch is concave than convex, as a share of all its bends: 1 for a clean
   * bore, 0 for a surface that only waves or is rough.
   */
  private double hollowness() {
    double sum = 0;
    double all = 0;
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      for (int h = 3 * facet; h < 3 * facet + 3; h++) {
        int other = surface.beyond(h);
        if (other >= 0 && facets.contains(other)) {
          double bend = surface.bend(h, other);
          sum += bend;
          all += Math.abs(bend);
        }
      }
    }
    return all > 0 ? sum / all : 1;
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

  /** Adds whole levels of smooth neighbours up to the limit; false if there are no more. */
  private boolean extend(int limit, FacetStates states, boolean along) {
    while (facets.size() < limit) {
      int levelEnd = facets.size();
      if (head == levelEnd) {
        return false;
      }
      if (levels == levelEnds.length) {
        levelEnds = Arrays.copyOf(levelEnds, 2 * levels);
      }
      levelEnds[levels++] = levelEnd;
      for (; head < levelEnd; head++) {
        int facet = facets.get(head);
        for (int h = 3 * facet; h < 3 * facet + 3; h++) {
          int other = surface.beyond(h);
          if (other >= 0
              && !facets.contains(other)
              && !states.isWall(other)
              && isSmooth(clear(facet), other, along)) {
            facets.add(other);
            remember(other, surface.isSliver(other) ? clear(facet) : other);
          }
        }
      }
    }
    return true;
  }

  /** The facet itself, or for a sliver the last one before it that has a direction. */
  private int clear(int facet) {
    return references[facets.position(facet)];
  }

  private void remember(int facet, int reference) {
    int at = facets.position(facet);
    if (at >= references.length) {
      references = Arrays.copyOf(references, 2 * at);
    }
    references[at] = reference;
  }

  /** True if the surface may go on as a wall over an edge, by the cosine of its turn there. */
  static boolean isSmooth(double cosine, boolean convex) {
    return cosine >= (convex ? LEAST_CONVEX_COSINE : LEAST_COSINE);
  }

  private boolean isSmooth(int facet, int other, boolean along) {
    if (surface.isSliver(other)) {
      return true;
    }
    double cosine = surface.cosine(facet, other);
    if (!isSmooth(cosine, cosine < LEAST_CONVEX_COSINE && surface.isConvex(facet, other))) {
      return false;
    }
    return !along
        || cosine >= flatCosine
        || surface.alignment(facet, other, bendFrom, bendTo) >= ALONG;
  }

  private Optional<WallModel> spread(WallModel start, FacetStates states) {
    WallModel model = start;
    double tolerance = toleranceFor(model);
    long before = 0;
    int settled = 0;
    int largest = 0;
    double least = 0;
    while (settled < MOST_SETTLING) {
      var test = new WallTest(surface, model.cylinder(), tolerance, model.step());
      grown.clear();
      for (int k = 0; k < facets.size(); k++) {
        if (test.accepts(facets.get(k))) {
          grown.add(facets.get(k));
        }
      }
      if (grown.size() < FEWEST) {
        return Optional.empty();
      }
      boolean done = flood(test, Math.max(64, 2 * grown.size()), states);
      facets.set(grown.items(), grown.size());
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
      tolerance = Math.max(least, toleranceFor(model));
    }
    dropLooseSlivers();
    return facets.size() < FEWEST ? Optional.empty() : Optional.of(model);
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

  private int neighbours(int facet) {
    int count = 0;
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      int other = surface.beyond(h);
      count += other >= 0 && facets.contains(other) && !surface.isSliver(other) ? 1 : 0;
    }
    return count;
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
