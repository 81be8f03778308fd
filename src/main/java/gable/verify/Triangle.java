package gable.verify;

import gable.geom.Vec3;

/**
 * A triangle with numbered corners, and whether two such meet where they must not. Equal numbers
 * are common corners; corners with different numbers are different even if they lie at one place.
 *
 * <p>All tests are signs of orientations, computed exactly, in the manner of P. Guigue and O.
 * Devillers, Fast and Robust Triangle-Triangle Overlap Test Using Orientation Predicates, Journal
 * of Graphics Tools 8 (2003); the cases with common corners are derived here. Triangles are closed
 * sets: a touch is a meeting.
 */
final class Triangle {

  private final int ia;
  private final int ib;
  private final int ic;
  private final Vec3 a;
  private final Vec3 b;
  private final Vec3 c;

  /** Axis along which it is seen as a triangle, and the turn of its corners then; 0 if flat. */
  private final int axis;

  private final int turn;

  /** A triangle with the numbers and the places of its corners. */
  Triangle(int ia, int ib, int ic, Vec3 a, Vec3 b, Vec3 c) {
    this.ia = ia;
    this.ib = ib;
    this.ic = ic;
    this.a = a;
    this.b = b;
    this.c = c;
    this.axis = Sides.seenAlong(a, b, c);
    this.turn = Sides.turn(a, b, c, axis);
  }

  private int number(int k) {
    return k == 0 ? ia : k == 1 ? ib : ic;
  }

  Vec3 corner(int k) {
    return k == 0 ? a : k == 1 ? b : c;
  }

  /** True if the corners lie on one line; such a triangle counts as part of its neighbours. */
  boolean isFlat() {
    return turn == 0;
  }

  private int placeOf(int number) {
    return number == ia ? 0 : number == ib ? 1 : number == ic ? 2 : -1;
  }

  /**
   * True if the two have a point in common that is not on their common corner or edge. Neither may
   * be flat.
   */
  boolean crosses(Triangle other) {
    int common = 0;
    int last = 0;
    int first = 0;
    for (int k = 0; k < 3; k++) {
      if (other.placeOf(number(k)) >= 0) {
        first = common == 0 ? k : first;
        last = k;
        common++;
      }
    }
    return switch (common) {
      case 0 -> meets(other);
      case 1 -> leavesCornerWith(first, other);
      case 2 ->
          foldsOnto(
              3 - first - last,
              other,
              3 - other.placeOf(number(first)) - other.placeOf(number(last)));
      default -> true;
    };
  }

  /** Common edge: they overlap if they lie in one plane with their third corners on one side. */
  private boolean foldsOnto(int apex, Triangle other, int otherApex) {
    Vec3 p = corner((apex + 1) % 3);
    Vec3 q = corner((apex + 2) % 3);
    Vec3 mine = corner(apex);
    Vec3 its = other.corner(otherApex);
    return Sides.turn(p, q, its, axis) == turn && Sides.of(p, q, mine, its) == 0;
  }

  /**
   * Common corner: with the wedges at it of both, they have more in common than the corner exactly
   * if a ray from it lies in both wedges, since near its corner a triangle is its wedge.
   */
  private boolean leavesCornerWith(int k, Triangle other) {
    int m = other.placeOf(number(k));
    Vec3 apex = corner(k);
    Vec3 p = corner((k + 1) % 3);
    Vec3 q = corner((k + 2) % 3);
    Vec3 r = other.corner((m + 1) % 3);
    Vec3 s = other.corner((m + 2) % 3);
    int its = Sides.turn(apex, r, s, axis);
    boolean shadowsMeet =
        inWedge(apex, p, q, r, turn)
            || inWedge(apex, p, q, s, turn)
            || inWedge(apex, r, s, p, its)
            || inWedge(apex, r, s, q, its);
    if (!shadowsMeet) {
      return false;
    }
    int sideR = Sides.of(apex, p, q, r);
    int sideS = Sides.of(apex, p, q, s);
    if (sideR * sideS > 0) {
      return false;
    }
    if (sideR == 0 && sideS == 0) {
      return true; // in one plane, so the shadows tell all
    }
    // the edge r-s comes through the plane of this triangle at one point: is it in its wedge?
    boolean downwards = sideR > 0 || sideS < 0;
    Vec3 above = downwards ? r : s;
    Vec3 below = downwards ? s : r;
    return Sides.of(above, below, apex, p) * SEEN_FROM_ABOVE >= 0
        && Sides.of(above, below, q, apex) * SEEN_FROM_ABOVE >= 0;
  }

  /**
   * Sign of the orientation (above, below, x, y) for a point in which above-below comes through a
   * plane, if x, y turn counter-clockwise about it seen from above: take above = +z, below = −z, x
   * = (1, 0, 0), y = (0, 1, 0): rows (0,0,−2), (1,0,−1), (0,1,−1), whose determinant is −2; the
   * orientation of the fourth point is that of the triple product with it last, the same sign.
   */
  private static final int SEEN_FROM_ABOVE = -1;

  /** True if x, seen along an axis, is in the wedge at the apex, or if the wedge looks flat. */
  private boolean inWedge(Vec3 apex, Vec3 p, Vec3 q, Vec3 x, int wedgeTurn) {
    return Sides.turn(apex, p, x, axis) * wedgeTurn >= 0
        && Sides.turn(apex, x, q, axis) * wedgeTurn >= 0;
  }

  private boolean meets(Triangle other) {
    if (separates(other, axis, turn)
        || other.separates(this, axis, Sides.turn(other.a, other.b, other.c, axis))) {
      return false;
    }
    int da = Sides.of(a, b, c, other.a);
    int db = Sides.of(a, b, c, other.b);
    int dc = Sides.of(a, b, c, other.c);
    if (da == db && db == dc) {
      return da == 0 && overlapsInPlane(other);
    }
    int ea = Sides.of(other.a, other.b, other.c, a);
    int eb = Sides.of(other.a, other.b, other.c, b);
    int ec = Sides.of(other.a, other.b, other.c, c);
    if (ea == eb && eb == ec) {
      return false;
    }
    // two triangles in different planes meet exactly if an edge of one meets the other; an edge
    // that lies in the plane of the other needs no look, since its neighbours end in its corners
    return pierces(other.a, other.b, da, db)
        || pierces(other.b, other.c, db, dc)
        || pierces(other.c, other.a, dc, da)
        || other.pierces(a, b, ea, eb)
        || other.pierces(b, c, eb, ec)
        || other.pierces(c, a, ec, ea);
  }

  /** True if the edge p-q, whose ends lie on the given sides of this plane, meets the triangle. */
  private boolean pierces(Vec3 p, Vec3 q, int sideP, int sideQ) {
    if (sideP * sideQ > 0 || sideP == sideQ) {
      return false;
    }
    int u = Sides.of(p, q, a, b);
    int v = Sides.of(p, q, b, c);
    if (u * v < 0) {
      return false;
    }
    int w = Sides.of(p, q, c, a);
    return u * w >= 0 && v * w >= 0;
  }

  /** True if a side of this triangle, seen along an axis, has all of the other beyond it. */
  private boolean separates(Triangle other, int along, int seenTurn) {
    for (int k = 0; k < 3 && seenTurn != 0; k++) {
      Vec3 p = corner(k);
      Vec3 q = corner((k + 1) % 3);
      if (Sides.turn(p, q, other.a, along) * seenTurn < 0
          && Sides.turn(p, q, other.b, along) * seenTurn < 0
          && Sides.turn(p, q, other.c, along) * seenTurn < 0) {
        return true;
      }
    }
    return false;
  }

  private boolean overlapsInPlane(Triangle other) {
    for (int k = 0; k < 3; k++) {
      for (int m = 0; m < 3; m++) {
        if (edgesMeet(k, other, m)) {
          return true;
        }
      }
    }
    return contains(other.a) || other.contains(a);
  }

  private boolean edgesMeet(int k, Triangle other, int m) {
    Vec3 p = corner(k);
    Vec3 q = corner((k + 1) % 3);
    Vec3 r = other.corner(m);
    Vec3 s = other.corner((m + 1) % 3);
    int pr = Sides.turn(p, q, r, axis);
    int ps = Sides.turn(p, q, s, axis);
    int rp = Sides.turn(r, s, p, axis);
    int rq = Sides.turn(r, s, q, axis);
    if (pr == 0 && ps == 0) {
      return false; // on one line: an overlap shows at the other edges or by containment
    }
    return pr * ps <= 0 && rp * rq <= 0;
  }

  private boolean contains(Vec3 x) {
    return Sides.turn(a, b, x, axis) * turn >= 0
        && Sides.turn(b, c, x, axis) * turn >= 0
        && Sides.turn(c, a, x, axis) * turn >= 0;
  }
}
