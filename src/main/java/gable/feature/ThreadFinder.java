package gable.feature;

import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Finds the inside threads of a part, so that they are left alone and said to be threads.
 *
 * <p>All facets of an inside thread turn inwards as they go about the axis, whatever its profile,
 * and they hang together. Each connected set of facets that turn inwards gives a screw motion
 * ({@link ScrewFit}); what is connected to it, moves along itself and does not face outwards is the
 * wall ({@link ScrewWall}); and {@link ThreadWave} decides. Each facet is in one set at most, and
 * the facets that walls look at are counted, so the cost is linear in the facets.
 */
final class ThreadFinder {

  /** Two turns of eight steps with one strip of two facets: fewer show no thread. */
  private static final int FEWEST = 32;

  /** A larger set is a sculpture or a rough part. */
  private static final int LARGEST = 200_000;

  /** Facets that may be looked at for walls, for each facet of the part. */
  private static final int BUDGET_PER_FACET = 4;

  /** Facets that face within half a degree along a rod are its end's. */
  private static final double FACE_COSINE = Math.cos(Math.toRadians(0.5));

  /** Share of a hole's area that faces the axis, of what faces it or away from it. */
  private static final double LEAST_INWARD = 0.8;

  /** Share of the radius by which a wall may be nearer or farther than its facets that turn. */
  private static final double SLACK = 0.02;

  private final Surface surface;
  private final Hollows hollows;
  private final FacetStates states;
  private final List<Bore.Builder> bores;
  private final IndexSet set;
  private final IndexSet wall;
  private final ScrewWall walls;
  private final ThreadReader reader;
  private final int[] bands;
  private final List<Bore.Builder> threads = new ArrayList<>();

  /** Vertices of the threads' walls. */
  private final BitSet vertices = new BitSet();

  private long budget;

  private ThreadFinder(
      Surface surface, Hollows hollows, FacetStates states, List<Bore.Builder> bores) {
    this.surface = surface;
    this.hollows = hollows;
    this.states = states;
    this.bores = bores;
    this.set = new IndexSet(surface.facetCount());
    this.wall = new IndexSet(surface.facetCount());
    this.walls = new ScrewWall(surface, -1);
    this.reader = new ThreadReader(surface);
    this.budget = (long) BUDGET_PER_FACET * surface.facetCount();
    this.bands =
        bores.stream()
            .filter(this::isBand)
            .flatMapToInt(bore -> Arrays.stream(bore.wall))
            .sorted()
            .toArray();
  }

  /**
   * Adds threads to the bores and takes out what has been read as bores on their walls. A band that
   * winds about its axis and belongs to no thread becomes a partial bore or nothing.
   */
  static void search(
      Surface surface, Hollows hollows, FacetStates states, List<Bore.Builder> bores) {
    new ThreadFinder(surface, hollows, states, bores).search();
  }

  /**
   * True if the end of a rod is an outside thread.
   *
   * @param facets the end, with the face in which it ends
   * @param out direction out of the rod
   */
  static boolean isOutside(Surface surface, List<Integer> facets, Vec3 out) {
    if (facets.size() < FEWEST) {
      return false;
    }
    var all = new IndexSet(surface.facetCount());
    var obeying = new IndexSet(surface.facetCount());
    for (int facet : facets) {
      Vec3 normal = new Vec3(surface.nx(facet), surface.ny(facet), surface.nz(facet));
      if (normal.dot(out) < FACE_COSINE) {
        all.add(facet);
      }
    }
    var walls = new ScrewWall(surface, 1);
    Optional<ScrewMotion> first = walls.motion(all);
    first
        .filter(motion -> all.size() >= FEWEST)
        .ifPresent(motion -> walls.keepObeying(motion, all, obeying));
    return obeying.size() >= FEWEST
        && walls
            .motion(obeying)
            .flatMap(motion -> ThreadWave.find(surface, obeying, motion))
            .isPresent();
  }

  /** A piece of a helical wall may have been read as a part of a bore. */
  private boolean isBand(Bore.Builder bore) {
    return isArc(bore) || reader.isGappy(bore);
  }

  private static boolean isArc(Bore.Builder bore) {
    return bore.shape == BoreShape.THREAD || bore.shape == BoreShape.PARTIAL;
  }

  private void search() {
    for (int facet = 0; facet < surface.facetCount(); facet++) {
      if (isFree(facet) && hollows.takeTurning(facet)) {
        collect(facet);
        if (set.size() >= FEWEST && set.size() <= LARGEST) {
          read();
        }
      }
    }
    List<Bore.Builder> winding =
        bores.stream().filter(ThreadFinder::isArc).filter(reader::winds).toList();
    bores.removeIf(bore -> isArc(bore) && reader.winds(bore));
    winding.forEach(band -> bores.addAll(reader.band(band)));
    for (Bore.Builder bore : threads.isEmpty() ? List.<Bore.Builder>of() : bores) {
      bore.low = threaded(bore.low);
      bore.high = threaded(bore.high);
    }
    bores.addAll(threads);
  }

  /** The same rim, or one that is known to lie on a thread. */
  private Rim threaded(Rim rim) {
    int[] loop = rim.loop();
    long on = Arrays.stream(loop).filter(vertices::get).count();
    return 2 * on > loop.length ? rim.as(EndKind.THREADED) : rim;
  }

  private boolean isFree(int facet) {
    return !states.isWall(facet) || Arrays.binarySearch(bands, facet) >= 0;
  }

  private void collect(int first) {
    set.clear();
    set.add(first);
    for (int at = 0; at < set.size(); at++) {
      for (int h = 3 * set.get(at); h < 3 * set.get(at) + 3; h++) {
        int other = surface.beyond(h);
        if (other >= 0 && isFree(other) && hollows.takeTurning(other)) {
          set.add(other);
        }
      }
    }
  }

  private void read() {
    Optional<ScrewMotion> first = walls.motion(set);
    if (first.isEmpty() || walls.facing(first.get(), set) < LEAST_INWARD) {
      return;
    }
    walls.keepObeying(first.get(), set, wall);
    Optional<ScrewMotion> motion = wall.size() < FEWEST ? Optional.empty() : walls.motion(wall);
    if (motion.isPresent()) {
      grow(motion.get());
      ThreadWave.find(surface, wall, motion.get()).or(this::onceMore).ifPresent(this::add);
    }
  }

  /** Where corners stray, all of the wall tells its motion better than the part that turns. */
  private Optional<ThreadWave.Found> onceMore() {
    return walls.motion(wall).flatMap(motion -> ThreadWave.find(surface, wall, motion));
  }

  /** Adds what is connected to the wall, obeys the motion and lies no nearer and no farther. */
  private void grow(ScrewMotion motion) {
    double near = Double.POSITIVE_INFINITY;
    double far = 0;
    for (int k = 0; k < wall.size(); k++) {
      double[] span = walls.span(motion, wall.get(k));
      near = Math.min(near, span[0] * (1 - SLACK));
      far = Math.max(far, span[1] * (1 + SLACK));
    }
    for (int at = 0; at < wall.size() && wall.size() < LARGEST && budget > 0; at++, budget--) {
      for (int h = 3 * wall.get(at); h < 3 * wall.get(at) + 3; h++) {
        int other = surface.across(h);
        if (other >= 0 && !wall.contains(other) && isFree(other) && walls.obeys(motion, other)) {
          double[] span = walls.span(motion, other);
          if (span[0] >= near && span[1] <= far) {
            wall.add(other);
          }
        }
      }
    }
  }

  private void add(ThreadWave.Found found) {
    int[] facets = wall.toArray();
    Arrays.sort(facets);
    bores.removeIf(bore -> isBand(bore) && mostly(bore.wall, facets));
    for (int facet : facets) {
      hollows.takeTurning(facet);
      for (int c = 0; c < 3; c++) {
        vertices.set(surface.mesh().corner(facet, c));
      }
    }
    threads.add(reader.thread(found, wall, facets));
  }

  private static boolean mostly(int[] part, int[] all) {
    return 2 * Arrays.stream(part).filter(facet -> Arrays.binarySearch(all, facet) >= 0).count()
        > part.length;
  }
}
