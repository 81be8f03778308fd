package gable.feature;

import java.util.Arrays;

/**
 * The facets around a seed, taken level by level over smooth edges. Levels are whole, so that what
 * a patch holds does not depend on the order of facets.
 */
final class Patch {

  /** Sharpest concave edge inside a patch: an octagon turns by 45 degrees. */
  static final double SHARPEST = Math.toRadians(46);

  /** Cosine of {@link #SHARPEST}. */
  static final double LEAST_COSINE = Math.cos(SHARPEST);

  /** Sharpest convex edge inside a patch: noise on slivers, but no chamfered mouth. */
  private static final double MOST_CONVEX = Math.toRadians(25);

  private static final double LEAST_CONVEX_COSINE = Math.cos(MOST_CONVEX);

  /** Inside a strip the surface turns by less than this share of the bend between strips. */
  private static final double FLAT_SHARE = 0.15;

  /**
   * The same for coarse walls, in radians: a degree. A rounding that goes on from a wall by less
   * than this has its next ring 1.2 micrometres off the wall for 2 mm of radius (derived: c (1 −
   * cos 2 β)), which does not matter; of ten facets the share above lets in 5.4 degrees, the first
   * band of a rounding in eight steps.
   */
  private static final double MOST_FLAT = Math.toRadians(1);

  /** Cosine of the largest angle between two bends of one prismatic wall: 15 degrees. */
  private static final double ALONG = Math.cos(Math.toRadians(15));

  /** Which bends a patch crosses. */
  enum Way {
    /**
     * Bends that run along the one at the seed: right for a prismatic wall, and keeps the patch out
     * of a cone or rounding at its end.
     */
    ALONG,
    /** The same, with less noise inside the strips of a coarse wall. */
    STRICTLY_ALONG,
    /** All that are smooth. */
    ANY
  }

  private final Surface surface;
  private final IndexSet facets;
  private final PatchBends bends;
  private int[] references = new int[256];
  private int[] levelEnds = new int[64];
  private int levels;
  private int head;
  private boolean along;
  private int bendFrom;
  private int bendTo;
  private double flat;
  private double flatCosine;

  /**
   * An empty patch.
   *
   * @param facets filled with its facets, nearest to the seed first
   */
  Patch(Surface surface, IndexSet facets) {
    this.surface = surface;
    this.facets = facets;
    this.bends = new PatchBends(surface);
  }

  /** True if the surface may go on as a wall over an edge, by the cosine of its turn there. */
  static boolean isSmooth(double cosine, boolean convex) {
    return cosine >= (convex ? LEAST_CONVEX_COSINE : LEAST_COSINE);
  }

  /**
   * Starts anew from a seed.
   *
   * @param way which bends to cross
   */
  void start(int seed, Way way) {
    along = way != Way.ANY;
    bendFrom = seed;
    bendTo = Seeds.sharpestBend(surface, seed);
    flat = FLAT_SHARE * surface.turn(bendFrom, bendTo);
    flatCosine = Math.cos(way == Way.STRICTLY_ALONG ? Math.min(MOST_FLAT, flat) : flat);
    facets.clear();
    bends.clear();
    facets.add(seed);
    remember(seed, seed);
    head = 0;
    levels = 0;
  }

  /** True if the patch may be another one when it starts strictly along the bend at its seed. */
  boolean isCoarse() {
    return flat > MOST_FLAT;
  }

  PatchBends bends() {
    return bends;
  }

  /** How hollow the facets are that are in the set now, however they came there. */
  double hollowness() {
    bends.clear();
    for (int k = 0; k < facets.size(); k++) {
      int facet = facets.get(k);
      for (int h = 3 * facet; h < 3 * facet + 3; h++) {
        int other = surface.beyond(h);
        if (other > facet && facets.contains(other)) {
          bends.add(h, other);
        }
      }
    }
    return bends.hollowness();
  }

  /** Adds whole levels of smooth neighbours up to the limit; false if there are no more. */
  boolean extend(int limit, FacetStates states) {
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
        addNeighbours(facets.get(head), states);
      }
    }
    return true;
  }

  /** Size of the levels that make up the inner part of the patch, at least the seed. */
  int inner(int share) {
    int size = 1;
    int most = facets.size() / share;
    for (int level = 0; level < levels && levelEnds[level] <= most; level++) {
      size = levelEnds[level];
    }
    return size;
  }

  private void addNeighbours(int facet, FacetStates states) {
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      int other = surface.beyond(h);
      if (other >= 0
          && !facets.contains(other)
          && !states.isBarred(other)
          && goesOn(clear(facet), other)) {
        facets.add(other);
        remember(other, surface.isSliver(other) ? clear(facet) : other);
        addBends(other);
      }
    }
  }

  private void addBends(int facet) {
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      int other = surface.beyond(h);
      if (other >= 0 && facets.contains(other)) {
        bends.add(h, other);
      }
    }
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

  private boolean goesOn(int facet, int other) {
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
}
