package gable.feature;

import java.util.BitSet;

/**
 * Tells, before any wall is grown and at a cost of a few operations for each facet, where no round
 * wall can be, so that the dear search spares waves, reliefs and rough surfaces.
 *
 * <p>Two laws of a bore decide. First, over its smooth edges one can walk around more than half a
 * turn; so a smooth piece of the surface whose normals all lie in one cap of the sphere holds no
 * bore, however it waves. Second, a bore bends inwards on the whole: where the bends around a facet
 * cancel out, the surface is rough and not hollow. The bends are averaged over the neighbourhood by
 * a few rounds in which every facet takes the mean of itself and its smooth neighbours; noise
 * cancels itself early, since a point that is lifted bends its edges one way and the edges around
 * it the other.
 *
 * <p>Both laws are made from sums over neighbours and hold for any order of the facets.
 */
final class Hollows {

  /**
   * A facet in a hollow has at least this much more concave than convex bends around it, as a share
   * of both. Estimate, from 5,900 walls of known parts: the median of a wall is 0.2 or more even
   * where points stray by 10 micrometres on facets of a quarter of a millimetre, and six facets in
   * ten or more of each wall are above 0.15; finer walls with that noise go down to 0.1. Of a rough
   * ball nine facets in ten are below 0.1, of a wavy face with noise three in four.
   */
  private static final double LEAST_HOLLOW = 0.05;

  /** Rounds of averaging: the weights then cover about 20 facets, as many as a small patch. */
  private static final int ROUNDS = 6;

  /** A needle is this many times as long as it is high. */
  private static final double SLENDER = 8;

  private static final int SEED = 8;

  private static final int TURNING = 16;
  private static final int SHARP_IN = 32;
  private static final int SHARP_OUT = 64;
  private static final int FLAT = 128;
  private static final int CREASED = SHARP_IN | SHARP_OUT;

  /** A bend of less than 2 degrees makes no crease. */
  private static final double CREASE_COSINE = Math.cos(Math.toRadians(2));

  /** A steep flank of 3 degrees (DIN 513) turns by 0.3 degrees from one of 64 steps to the next. */
  private static final double TURN_COSINE = Math.cos(Math.toRadians(0.25));

  /** A larger smooth piece is a sculpture or a rough part, not a flank or a wall of a thread. */
  private static final int LARGEST_TURNING = 200_000;

  private final Surface surface;
  private final double needle;

  /**
   * Bits 0 to 2: a smooth piece goes on beyond that half-edge of the facet; 3: a seed; 4: it turns
   * inwards and may belong to a thread; 5 to 7: it has sharp bends inwards, outwards, flat ones.
   */
  private final byte[] marks;

  /** For each facet the number of its smooth piece; 0 for a piece without seeds. */
  private final int[] pieces;

  private Hollows(Surface surface, double needle) {
    this.surface = surface;
    this.needle = needle;
    this.marks = new byte[surface.facetCount()];
    this.pieces = new int[surface.facetCount()];
  }

  /**
   * Judges all facets.
   *
   * @param needle a slender facet less high than this, in millimetres, may be turned by noise so
   *     far that it seems to end a smooth piece
   */
  static Hollows of(Surface surface, double needle) {
    var hollows = new Hollows(surface, needle);
    hollows.markEdges();
    int[] facets = new int[surface.facetCount()];
    hollows.average(facets, hollows.dropCaps(facets));
    return hollows;
  }

  /** True if a wall may grow from a facet. */
  boolean isSeed(int facet) {
    return (marks[facet] & SEED) != 0;
  }

  /**
   * True once for each facet that may belong to a thread. It turns inwards on a piece of the size
   * of a thread's, which is no cap, or a cap whose normals lean alike, as on a flank. Or it is
   * creased, as threads are that were twisted up in few steps: sharp bends inwards and outwards,
   * and none that is flat, as there is in every face that has more than three corners.
   */
  boolean takeTurning(int facet) {
    int mark = marks[facet];
    boolean creased = (mark & (CREASED | FLAT)) == CREASED;
    marks[facet] = (byte) (mark & ~TURNING | FLAT);
    return creased || (mark & TURNING) != 0;
  }

  private void markEdges() {
    for (int facet = 0; facet < marks.length; facet++) {
      boolean sliver = surface.isSliver(facet);
      for (int k = 0; k < 3; k++) {
        int halfEdge = 3 * facet + k;
        int opposite = surface.opposedBeyond(halfEdge);
        if (opposite < 0) {
          continue;
        }
        int other = opposite / 3;
        if (sliver || surface.isSliver(other)) {
          add(facet, 1 << k);
        } else if (halfEdge < opposite) { // what joins two facets is the same from either side
          int mark = mark(halfEdge, other);
          add(facet, mark & ~1 | (mark & 1) << k);
          add(other, mark & ~1 | (mark & 1) << (opposite - 3 * other));
        }
      }
    }
  }

  private void add(int facet, int bits) {
    marks[facet] = (byte) (marks[facet] | bits);
  }

  /** The bits of a half-edge, as if it were the first of its facet. */
  private int mark(int halfEdge, int other) {
    int facet = halfEdge / 3;
    double cosine = surface.cosine(facet, other);
    double bend = surface.bend(halfEdge, other);
    if (Patch.isSmooth(cosine, bend < 0)) {
      int flat = cosine > CREASE_COSINE ? FLAT | 1 : 1;
      if (bend <= 0 || cosine >= Seeds.FLATTEST_COSINE) {
        return flat;
      }
      return cosine < TURN_COSINE ? SEED | TURNING | flat : SEED | flat;
    }
    int sharp = bend > 0 ? SHARP_IN : SHARP_OUT;
    return isNeedle(facet) || isNeedle(other) ? sharp | 1 : sharp;
  }

  private boolean isNeedle(int facet) {
    return surface.isNeedle(facet, needle, SLENDER);
  }

  /**
   * Walks over each smooth piece and takes its seeds out of use if its normals lie in a cap.
   *
   * @param kept filled with the facets of the other pieces
   * @return how many they are
   */
  private int dropCaps(int[] kept) {
    int number = 0;
    int count = 0;
    for (int facet = 0; facet < marks.length; facet++) {
      if (pieces[facet] == 0 && isSeed(facet)) {
        int end = collect(facet, ++number, kept, count);
        boolean cap = Caps.isCap(surface, kept, count, end);
        boolean turning =
            end - count <= LARGEST_TURNING && !(cap && !Caps.leansAlike(surface, kept, count, end));
        int lost = (cap ? SEED : 0) | (turning ? 0 : TURNING);
        for (int k = count; k < end && lost != 0; k++) {
          marks[kept[k]] = (byte) (marks[kept[k]] & ~lost);
        }
        count = cap ? count : end;
      }
    }
    return count;
  }

  private int collect(int first, int number, int[] piece, int from) {
    int end = from;
    piece[end++] = first;
    pieces[first] = number;
    for (int at = from; at < end; at++) {
      int facet = piece[at];
      for (int k = 0; k < 3; k++) {
        if ((marks[facet] & 1 << k) != 0) {
          int other = surface.beyond(3 * facet + k);
          if (pieces[other] == 0) {
            pieces[other] = number;
            piece[end++] = other;
          }
        }
      }
    }
    return end;
  }

  /**
   * Averages the bends over the pieces and takes seeds out of use that lie in no hollow. Goes
   * through the facets in the order of the file, in which neighbours mostly lie near each other,
   * and finds each one's neighbours once: for four million facets that takes a third of the time.
   */
  private void average(int[] facets, int count) {
    sort(facets, count);
    int[] neighbours = new int[3 * count];
    float[] bends = new float[count == 0 ? 0 : 2 * marks.length];
    float[] next = new float[bends.length];
    for (int k = 0; k < count; k++) {
      sumBends(facets[k], bends);
      for (int side = 0; side < 3; side++) {
        neighbours[3 * k + side] = neighbour(facets[k], side);
      }
    }
    for (int round = 0; round < ROUNDS; round++) {
      average(facets, neighbours, bends, next);
      float[] swap = bends;
      bends = next;
      next = swap;
    }
    for (int k = 0; k < count; k++) {
      int facet = facets[k];
      if (bends[2 * facet] < LEAST_HOLLOW * bends[2 * facet + 1]) {
        marks[facet] &= ~SEED;
      }
    }
  }

  /** Ascending; all are different and none is beyond the number of facets. */
  private void sort(int[] facets, int count) {
    BitSet set = new BitSet(marks.length);
    for (int k = 0; k < count; k++) {
      set.set(facets[k]);
    }
    int at = 0;
    for (int facet = set.nextSetBit(0); facet >= 0; facet = set.nextSetBit(facet + 1)) {
      facets[at++] = facet;
    }
  }

  /** The facet beyond a side if it is of the same piece, otherwise the facet itself. */
  private int neighbour(int facet, int side) {
    int beyond = surface.beyond(3 * facet + side);
    return beyond < 0 || pieces[beyond] != pieces[facet] ? facet : beyond;
  }

  private void sumBends(int facet, float[] bends) {
    double sum = 0;
    double all = 0;
    for (int k = 0; k < 3; k++) {
      int other = surface.beyond(3 * facet + k);
      if (other >= 0 && counts(facet, k, other)) {
        double bend = surface.bend(3 * facet + k, other);
        sum += bend;
        all += Math.abs(bend);
      }
    }
    bends[2 * facet] = (float) sum;
    bends[2 * facet + 1] = (float) all;
  }

  /**
   * True if a bend belongs to the surface and is no end of it. On a rough piece convex bends are as
   * sharp as concave ones, and one kind must not be left out.
   */
  private boolean counts(int facet, int k, int other) {
    if (pieces[other] != pieces[facet] || surface.cosine(facet, other) < Patch.LEAST_COSINE) {
      return false;
    }
    return (marks[facet] & 1 << k) != 0 || !isNeedle(facet) && !isNeedle(other);
  }

  /** One round: every facet takes the mean of itself and its three neighbours. */
  private static void average(int[] facets, int[] neighbours, float[] from, float[] to) {
    for (int k = 0; 3 * k < neighbours.length; k++) {
      int facet = facets[k];
      int first = neighbours[3 * k];
      int second = neighbours[3 * k + 1];
      int third = neighbours[3 * k + 2];
      double sum = (double) from[2 * facet] + from[2 * first] + from[2 * second] + from[2 * third];
      double all =
          (double) from[2 * facet + 1]
              + from[2 * first + 1]
              + from[2 * second + 1]
              + from[2 * third + 1];
      to[2 * facet] = (float) (sum / 4);
      to[2 * facet + 1] = (float) (all / 4);
    }
  }
}
