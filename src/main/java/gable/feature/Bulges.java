package gable.feature;

import gable.geom.Vec3;
import gable.mesh.Mesh;
import java.util.Arrays;

/**
 * Tells at a cost of a few operations for each facet where no pin can be, so that a part without
 * pins is searched once and not twice.
 *
 * <p>Three laws of a pin decide. Its wall bends outwards; over its smooth edges one can walk around
 * more than half a turn, so that its normals do not lie in one cap of the sphere; and it has a
 * root, so that somewhere the surface bends inwards beside it. A ball, a part with rounded edges, a
 * wavy face fail one of them. What passes is looked at by the finder of bores.
 */
final class Bulges {

  /** How the surface goes on over a half-edge; a wall goes on over 1 to 3. */
  private static final byte FLAT = 1;

  private static final byte CONVEX = 2;
  private static final byte HARDLY_CONCAVE = 3;
  private static final byte MILD = 4;
  private static final byte SHARP = 5;

  private static final byte BENT = 1;
  private static final byte ROOTED = 2;
  private static final byte SEEN = 4;
  private static final byte ROUGH = 8;
  private static final byte KEPT = 16;

  /**
   * Sharpest bend inwards that noise makes in a wall: 10 micrometres on facets 0.3 mm wide make 4
   * degrees (derived: twice the noise over the width). A facet that bends inwards more sharply, and
   * outwards along much the same direction, is rough; a piece does not go on over it, so that a
   * rough surface falls apart into small pieces, each of which is a cap. Beside the fillet of a
   * root a wall bends inwards across its own bends.
   */
  private static final double MOST_CONCAVE_COSINE = Math.cos(Math.toRadians(6));

  /** Edges of a facet at more than this angle run across each other. */
  private static final double ACROSS_COSINE = Math.cos(Math.toRadians(75));

  /** Sharpest bend outwards inside a wall: an octagon turns by 45 degrees. */
  private static final double SHARPEST_COSINE = Math.cos(Math.toRadians(46));

  /** Sharper than this a bend inwards is an end. */
  private static final double END_COSINE = Math.cos(Math.toRadians(25));

  /** A larger piece is a sculpture: a pin 20 mm wide and 60 long has so many facets of 0.25 mm. */
  private static final int LARGEST = 100_000;

  /** So many flat facets in a row may lie inside a strip of a wall between two bends. */
  private static final int STRIP = 6;

  /** Rings of facets around a wall that tell what its ends are. */
  private static final int RINGS = 3;

  private final Surface surface;
  private final byte[] bends;
  private final byte[] marks;
  private int[] piece = new int[1024];

  /** For each facet of the piece, how many flat ones lie between it and a convex bend. */
  private byte[] depth = new byte[1024];

  private int[] facets = new int[0];

  private Bulges(Surface surface) {
    this.surface = surface;
    this.bends = new byte[3 * surface.facetCount()];
    this.marks = new byte[surface.facetCount()];
  }

  /** Looks at all facets. */
  static Bulges of(Surface surface) {
    var bulges = new Bulges(surface);
    bulges.look();
    if (bulges.mark()) {
      bulges.facets = bulges.withRings(bulges.collect());
    }
    return bulges;
  }

  /** The facets that may belong to pins, with some around them, ascending; not to be changed. */
  int[] facets() {
    return facets;
  }

  /** True if most of a wall belongs to a piece that may be a pin, and not to what is around it. */
  boolean mayBeWall(int[] wall) {
    return 2 * Arrays.stream(wall).filter(facet -> (marks[facet] & KEPT) != 0).count()
        > wall.length;
  }

  private void look() {
    for (int h = 0; h < bends.length; h++) {
      int opposite = surface.opposedBeyond(h);
      if (opposite > h) {
        byte bend = bend(h, opposite / 3);
        bends[h] = bend;
        bends[opposite] = bend;
      }
    }
  }

  private byte bend(int halfEdge, int other) {
    int facet = halfEdge / 3;
    double cosine = surface.cosine(facet, other);
    if (cosine >= Seeds.FLATTEST_COSINE
        || cosine == 0 && (surface.isSliver(facet) || surface.isSliver(other))) {
      return FLAT;
    }
    if (surface.bend(halfEdge, other) <= 0) {
      return cosine >= SHARPEST_COSINE ? CONVEX : 0;
    }
    if (cosine >= MOST_CONCAVE_COSINE) {
      return HARDLY_CONCAVE;
    }
    return cosine >= END_COSINE ? MILD : SHARP;
  }

  /** Marks facets beside bends; false if nothing bends outwards or nothing inwards. */
  private boolean mark() {
    byte all = 0;
    for (int facet = 0; facet < marks.length; facet++) {
      byte mark = 0;
      boolean mild = false;
      for (int h = 3 * facet; h < 3 * facet + 3; h++) {
        mark |= bends[h] == CONVEX ? BENT : bends[h] >= HARDLY_CONCAVE ? ROOTED : 0;
        mild |= bends[h] == MILD;
      }
      if (mild && (mark & BENT) != 0 && isRough(facet)) {
        mark |= ROUGH;
      }
      marks[facet] = mark;
      all |= mark;
    }
    return (all & (BENT | ROOTED)) == (BENT | ROOTED);
  }

  /** True if the facet bends inwards and outwards along much the same direction. */
  private boolean isRough(int facet) {
    for (int h = 3 * facet; h < 3 * facet + 3; h++) {
      for (int g = 3 * facet; g < 3 * facet + 3; g++) {
        if (bends[h] == MILD && bends[g] == CONVEX && !runAcross(h, g)) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean runAcross(int h, int g) {
    Mesh mesh = surface.mesh();
    Vec3 a = mesh.point(mesh.target(h)).minus(mesh.point(mesh.origin(h)));
    Vec3 b = mesh.point(mesh.target(g)).minus(mesh.point(mesh.origin(g)));
    return Math.abs(a.dot(b)) < ACROSS_COSINE * a.norm() * b.norm();
  }

  /** Facets of all pieces that obey the laws. */
  private int[] collect() {
    int[] kept = new int[1024];
    int count = 0;
    for (int facet = 0; facet < marks.length; facet++) {
      if ((marks[facet] & (BENT | SEEN | ROUGH)) == BENT) {
        int size = walk(facet);
        if (mayBePin(size)) {
          if (count + size > kept.length) {
            kept = Arrays.copyOf(kept, 2 * (count + size));
          }
          System.arraycopy(piece, 0, kept, count, size);
          count += size;
        }
      }
    }
    return Arrays.copyOf(kept, count);
  }

  /** Collects a smooth piece: facets beside convex bends, and some flat ones between them. */
  private int walk(int first) {
    int end = 0;
    piece[end++] = first;
    marks[first] |= SEEN;
    for (int at = 0; at < end; at++) {
      int facet = piece[at];
      int deep = (marks[facet] & BENT) != 0 ? 0 : depth[at];
      if (deep > STRIP || (marks[facet] & ROUGH) != 0) {
        continue;
      }
      for (int h = 3 * facet; h < 3 * facet + 3; h++) {
        int other = bends[h] == 0 || bends[h] > HARDLY_CONCAVE ? -1 : surface.beyond(h);
        if (other >= 0 && (marks[other] & SEEN) == 0) {
          if (end == piece.length) {
            piece = Arrays.copyOf(piece, 2 * end);
            depth = Arrays.copyOf(depth, 2 * end);
          }
          marks[other] |= SEEN;
          depth[end] = (byte) (deep + 1);
          piece[end++] = other;
        }
      }
    }
    return end;
  }

  private boolean mayBePin(int size) {
    if (size > LARGEST) {
      return false;
    }
    boolean rooted = false;
    for (int k = 0; k < size && !rooted; k++) {
      rooted = (marks[piece[k]] & ROOTED) != 0;
    }
    return rooted && !Caps.isCap(surface, piece, 0, size);
  }

  private int[] withRings(int[] kept) {
    boolean[] in = new boolean[kept.length == 0 ? 0 : marks.length];
    for (int facet : kept) {
      in[facet] = true;
      marks[facet] |= KEPT;
    }
    int[] all = kept;
    int from = 0;
    int count = kept.length;
    for (int ring = 0; ring < RINGS; ring++) {
      int end = count;
      for (int at = from; at < end; at++) {
        for (int h = 3 * all[at]; h < 3 * all[at] + 3; h++) {
          int other = surface.across(h);
          if (other >= 0 && !in[other]) {
            in[other] = true;
            if (count == all.length) {
              all = Arrays.copyOf(all, 2 * count);
            }
            all[count++] = other;
          }
        }
      }
      from = end;
    }
    int[] sorted = Arrays.copyOf(all, count);
    Arrays.sort(sorted);
    return sorted;
  }
}
