package gable.feature;

import gable.geom.Tolerances;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Looks ahead, on another thread than the search, at seeds that the search has not come to, and
 * tells it around which of them no wall begins. On a large rough part most seeds are such, and the
 * search then only takes out of use what it would have taken out of use itself.
 *
 * <p>The search never waits for it, and what it finds is the same with it and without: a patch
 * depends on the mesh and on which facets are barred, so what was told is used only if no facet has
 * been barred since before the scout looked. Seeds are gone through in blocks, by the search from
 * the front and by the scout from the back, until they meet.
 */
final class Scout {

  /** Blocks so short that little is in vain when facets are barred, and so long that few meet. */
  private static final int BLOCK = 256;

  /** A scout needs memory for a second search, which takes longer than some hundred seeds. */
  static final int WORTH_IT = 4096;

  private final Surface surface;
  private final Tolerances tolerances;
  private final FacetStates states;
  private final int[] seeds;

  /**
   * Written by the scout, read by the search, which sees a whole miss or none: its fields are
   * final.
   */
  private final Miss[] misses;

  private volatile int searched;
  private volatile boolean over;

  /**
   * A scout that has not started.
   *
   * @param states changed by the search only
   * @param seeds in the order of the search
   */
  Scout(Surface surface, Tolerances tolerances, FacetStates states, int[] seeds) {
    this.surface = surface;
    this.tolerances = tolerances;
    this.states = states;
    this.seeds = seeds;
    this.misses = new Miss[seeds.length];
  }

  /** No wall begins at a seed. */
  static final class Miss {

    private final int epoch;
    private final int looked;
    private final int[] core;

    private Miss(int epoch, int looked, int[] core) {
      this.epoch = epoch;
      this.looked = looked;
      this.core = core;
    }

    /** Of the states, before the patch was taken. */
    int epoch() {
      return epoch;
    }

    /** How many facets the patch had. */
    int looked() {
      return looked;
    }

    /** Those facets of the patch that are as little use as the seed; not to be changed. */
    int[] core() {
      return core;
    }

    /** What a grower tells that has just failed. */
    static Miss of(int epoch, WallGrower grower) {
      IndexSet facets = grower.facets();
      int core = Math.min(grower.core(), facets.size());
      return new Miss(epoch, facets.size(), Arrays.copyOf(facets.items(), core));
    }
  }

  /** Looks ahead until the search is over. Needs memory for a second search. */
  Supplier<Integer> work() {
    return () -> {
      WallGrower grower = new WallGrower(surface, tolerances, new WallMeasure(surface));
      int told = 0;
      for (int from = 0; from < seeds.length && !over; from = next(from)) {
        told += back(from, grower);
      }
      return told;
    };
  }

  /** The start of the block after this one, or of the one that the search is in. */
  private int next(int from) {
    return Math.max(from + BLOCK, searched / BLOCK * BLOCK);
  }

  /** Goes through a block from its end to where the search is; gives how many misses it told. */
  private int back(int from, WallGrower grower) {
    int told = 0;
    int end = Math.min(from + BLOCK, seeds.length);
    for (int at = end - 1; at >= from && at > searched && !over; at--) {
      if (states.isFree(seeds[at])) {
        int epoch = states.epoch();
        if (!grower.begins(seeds[at], states)) {
          misses[at] = Miss.of(epoch, grower);
          told++;
        }
      }
    }
    return told;
  }

  /** Called by the search before it turns to a seed: what is known about it, if that holds. */
  Optional<Miss> ahead(int at) {
    searched = at;
    return Optional.ofNullable(misses[at]).filter(miss -> miss.epoch() == states.epoch());
  }

  /** The search has ended. */
  void end() {
    over = true;
  }
}
