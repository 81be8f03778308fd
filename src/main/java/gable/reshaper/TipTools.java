package gable.reshaper;

import gable.feature.Pin;
import gable.feature.Surroundings;
import gable.feature.Surroundings.Passage;
import gable.geom.Box3;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.plan.ConvexTool;
import gable.plan.Cut;
import gable.plan.Limits;
import gable.plan.Operation;
import gable.plan.Reason;
import gable.plan.ToolPlane;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * The two cuts that chamfer the flat tip of a pin. The first takes its end off, down to the outline
 * a leg below the tip, and a shallow pit within it, one plane for each side of the outline. The
 * second puts the end on again, narrowing: it fills the pit and has one plane at 45 degrees to the
 * axis above each side, so that every facet of the pin gets a facet of chamfer with its own plane.
 *
 * <p>(Wedges, one for each facet, would do in one kind of cut, but each would cut the tip's face
 * and all that the others left, which falls into slivers. A flat end instead of the pit is cut
 * along the diagonals of its facets, which follow from their order and not from the part: it is the
 * second choice, where rounding parts two planes of the pit that should meet a ruling in one
 * point.)
 *
 * <p>The planes of the chamfer stand a hair inside the outline, so that they cross the pit at a
 * real angle and never meet the edge of the wall.
 */
final class TipTools {

  /**
   * How far the planes stand inside the outline, in millimetres: above the merging of points, 1e-4,
   * and below a fiftieth of the smallest legs in use.
   */
  private static final double HAIR = 0.0035;

  /**
   * How deep the foot of the second body stands in the pin, in millimetres: above the grid of
   * written numbers, 1e-6, and so little that the flattest flank (70 degrees from the wall) stays
   * within the outline: tan 70 times it is below the hair.
   */
  private static final double FOOT = 0.0012;

  /** What is nearer than this, in millimetres, prints as one: half a line of 0.4 (practice). */
  private static final double APART = 0.2;

  /** What is nearer than this, in millimetres, touches: points closer than 1e-4 are one. */
  private static final double TOUCHING = 1e-3;

  /** Steps in which a plane is turned to be steep enough, and how far at most, in radians. */
  private static final double STEP = Math.toRadians(0.25);

  private static final double MOST_TURNED = Math.toRadians(25);

  /** Slope of the pit at most, and its depth at most as a share of the leg. */
  private static final double DIP = Math.tan(Math.toRadians(10));

  private static final double PIT = 0.25;

  /** How far the first cut reaches into the air, in millimetres; nothing else is cut there. */
  private static final double AIR = 0.1;

  /** A share of a side beside its corner: lines through an edge may be missed by both facets. */
  private static final double BESIDE = 0.02;

  /** Passages nearer to each other than this, in millimetres, are at one edge. */
  private static final double SAME = 1e-7;

  /** Rounding of a direction. */
  private static final double LEVEL = 1e-12;

  private final Pin pin;
  private final double leg;
  private final Vec3 along;
  private final Plane tip;
  private final Plane floor;
  private final List<Vec3> loop;
  private final List<Vec3> outline;

  TipTools(Pin pin, Plane tip, double leg, Surroundings around) {
    this.pin = pin;
    this.leg = leg;
    this.along = pin.axis().direction();
    this.tip = tip;
    this.floor = tip.moved(-leg * tip.normal().dot(along));
    this.loop = loop(around);
    this.outline = Outlines.withoutStraight(hull(loop));
  }

  /** Why no chamfer can be made here; nothing if one can. */
  Optional<Reason> obstacle(Surroundings around) {
    if (outline.isEmpty()) {
      return Optional.of(new Reason("no-outline", "the outline of the pin below its tip is open"));
    }
    double inside = inside();
    double gap = Double.POSITIVE_INFINITY;
    for (int k = 0; k < outline.size(); k++) {
      Vec3 way = outline.get((k + 1) % outline.size()).minus(outline.get(k));
      for (double share : new double[] {BESIDE, 0.5}) {
        gap = Math.min(gap, gap(around, outline.get(k).along(way, share), inside));
      }
    }
    return near(gap);
  }

  /**
   * How far inside the outline lines start: well within the pin, so that the first passage is out
   * of it, and below the tip's face, which falls inwards on the high side of a slanted tip.
   */
  private double inside() {
    double upright = Math.abs(tip.normal().dot(along));
    double falls = Math.sqrt(Math.max(0, 1 - upright * upright)) / upright;
    double below = falls == 0 ? Double.POSITIVE_INFINITY : 0.4 * leg / falls;
    return Math.min(pin.radius() / 4, below);
  }

  /** Least gap beside and before the tip from a place in the outline. */
  private double gap(Surroundings around, Vec3 place, double inside) {
    Vec3 out = sideways(place).unit();
    double least = Double.POSITIVE_INFINITY;
    for (double height : new double[] {0, 0.5 * leg}) {
      Vec3 start = place.along(along, height).along(out, -inside);
      least = Math.min(least, gap(around.passages(start, out, inside + APART)));
    }
    double in = Math.min(0.47 * pin.radius(), inside); // anywhere between axis and wall
    Vec3 start = place.along(out, -in);
    double reach = onto(tip, start).distance(start) + APART;
    return Math.min(least, gap(around.passages(start, along, reach)));
  }

  /**
   * Distance from where a line that starts in the pin leaves all solid to where it enters again.
   */
  private static double gap(List<Passage> passages) {
    int depth = 1;
    for (int k = 0; k < passages.size(); k++) {
      Passage passage = passages.get(k);
      Passage before = passages.get(Math.max(0, k - 1));
      boolean twice = // through an edge: both its facets are met
          k > 0 && passage.at() - before.at() < SAME && passage.leaves() == before.leaves();
      if (depth == 0 && !twice) {
        return passage.at() - before.at();
      }
      depth += twice ? 0 : passage.leaves() ? -1 : 1;
    }
    return depth > 0 ? 0 : Double.POSITIVE_INFINITY;
  }

  private static Optional<Reason> near(double gap) {
    if (gap <= TOUCHING) {
      return Optional.of(new Reason("touching", "something touches the pin at its tip"));
    }
    return gap >= APART ? Optional.empty() : Optional.of(Reason.tooClose("the tip", gap, APART));
  }

  /**
   * Takes the end off, and puts it on narrowing.
   *
   * @param pitted whether the end comes off down to a pit, or to a flat face
   */
  List<Cut> cuts(Limits limits, boolean pitted) {
    return List.of(
        new Cut(Operation.SUBTRACT, end(pitted)),
        new Cut(Operation.ADD, narrowing(limits.slope(), pitted)));
  }

  private ConvexTool end(boolean pitted) {
    List<ToolPlane> planes = new ArrayList<>(foot(0, pitted));
    planes.add(plane(tip.moved(AIR)));
    Vec3 middle = onto(floor, pin.axis().origin());
    Vec3 u = along.anySquare();
    Vec3 v = along.cross(u);
    for (Vec3 side : new Vec3[] {u, v, u.times(-1), v.times(-1)}) {
      planes.add(plane(Plane.through(middle.along(side, pin.radius() + AIR), side)));
    }
    return tool(planes, middle.along(along, leg / 2));
  }

  private ConvexTool narrowing(double slope, boolean pitted) {
    List<ToolPlane> planes = new ArrayList<>();
    for (int k = 0; k < outline.size(); k++) {
      Side side = side(k);
      Vec3 start = side.from.along(side.out, -HAIR - stray(side));
      Plane chamfer = Plane.through(start, leaning(side.out, side.up, slope));
      planes.add(new ToolPlane(chamfer, 0, ToolPlane.Role.FLANK));
    }
    planes.add(plane(tip));
    planes.addAll(foot(FOOT, pitted));
    return tool(planes, onto(floor, pin.axis().origin()).along(along, leg / 2));
  }

  /** The planes of the pit or the flat face, facing down, or planes that lie deeper. */
  private List<ToolPlane> foot(double deeper, boolean pitted) {
    if (!pitted) {
      Plane face = floor.moved(-deeper * tip.normal().dot(along)).flipped();
      return List.of(new ToolPlane(face, 0, ToolPlane.Role.BASE));
    }
    double dip = Math.min(DIP, PIT * leg / pin.radius());
    List<ToolPlane> planes = new ArrayList<>();
    for (int k = 0; k < outline.size(); k++) {
      Side side = side(k);
      Vec3 normal = side.out.times(dip).minus(side.up).unit();
      Plane face = Plane.through(side.from, normal).moved(deeper);
      planes.add(new ToolPlane(face, 0, ToolPlane.Role.BASE));
    }
    return planes;
  }

  /**
   * A side of the outline.
   *
   * @param from its start
   * @param way to its end
   * @param out normal of the wall there
   * @param up square to both, towards the tip
   */
  private record Side(Vec3 from, Vec3 way, Vec3 out, Vec3 up) {}

  private Side side(int k) {
    Vec3 from = outline.get(k);
    Vec3 way = outline.get((k + 1) % outline.size()).minus(from);
    Vec3 out = way.cross(along).unit();
    Vec3 across = out.cross(way).unit();
    return new Side(from, way, out, across.dot(along) < 0 ? across.times(-1) : across);
  }

  /** How far the true outline lies inside a side of its convex hull. */
  private double stray(Side side) {
    double most = 0;
    for (Vec3 point : loop) {
      double share = point.minus(side.from).dot(side.way) / side.way.dot(side.way);
      if (share > 0 && share < 1) {
        double inside = side.from.minus(point).dot(side.out);
        most = inside < pin.radius() ? Math.max(most, inside) : most;
      }
    }
    return most;
  }

  private ConvexTool tool(List<ToolPlane> planes, Vec3 near) {
    return ConvexTool.of(planes, near, 20 * (pin.radius() + leg));
  }

  private static ToolPlane plane(Plane plane) {
    return new ToolPlane(plane, 0, ToolPlane.Role.END);
  }

  /**
   * Normal of a chamfer plane out of the pin: 45 degrees between the wall and the tip, and turned
   * to the side that makes it steeper where it would hang flatter than the slope limit.
   */
  private static Vec3 leaning(Vec3 out, Vec3 up, double slope) {
    for (double turn = 0; turn <= MOST_TURNED; turn += STEP) {
      for (int sign = 1; sign >= -1; sign -= 2) {
        double angle = Math.PI / 4 + sign * turn;
        Vec3 normal = out.times(Math.cos(angle)).plus(up.times(Math.sin(angle))).unit();
        if (-normal.z() <= Math.cos(slope) + LEVEL) {
          return normal;
        }
      }
    }
    return out.plus(up).unit();
  }

  /** The outline of the pin in the floor plane; empty if there is none. */
  private List<Vec3> loop(Surroundings around) {
    Vec3 centre = onto(floor, pin.axis().origin());
    double reach = 2 * pin.radius() / Math.abs(floor.normal().dot(along));
    Box3 near = Box3.EMPTY.with(centre).grown(reach);
    for (List<Vec3> found : around.outlines(floor, near)) {
      if (surrounds(found)) {
        return found;
      }
    }
    return List.of();
  }

  /** True if a loop goes once about the axis, and stays near the wall of the pin. */
  private boolean surrounds(List<Vec3> found) {
    double turned = 0;
    for (int k = 0; k < found.size(); k++) {
      Vec3 a = sideways(found.get(k));
      Vec3 b = sideways(found.get((k + 1) % found.size()));
      turned += Math.atan2(a.cross(b).dot(along), a.dot(b));
      if (a.norm() > 1.2 * pin.radius()) {
        return false;
      }
    }
    return Math.abs(Math.abs(turned) - 2 * Math.PI) < 1e-3;
  }

  /** Convex hull, counter-clockwise seen from the tip, by the chain of A. M. Andrew (1979). */
  private List<Vec3> hull(List<Vec3> points) {
    Vec3 u = along.anySquare();
    Vec3 v = along.cross(u);
    List<Vec3> sorted = new ArrayList<>(points);
    sorted.sort(
        (a, b) -> {
          int first = Double.compare(a.dot(u), b.dot(u));
          return first != 0 ? first : Double.compare(a.dot(v), b.dot(v));
        });
    List<Vec3> chain = new ArrayList<>();
    for (int pass = 0; pass < 2; pass++) {
      int start = chain.size();
      for (Vec3 p : sorted) {
        while (chain.size() >= start + 2
            && turn(chain.get(chain.size() - 2), chain.get(chain.size() - 1), p) <= 0) {
          chain.remove(chain.size() - 1);
        }
        chain.add(p);
      }
      if (!chain.isEmpty()) {
        chain.remove(chain.size() - 1);
      }
      Collections.reverse(sorted);
    }
    return chain;
  }

  private double turn(Vec3 a, Vec3 b, Vec3 c) {
    return b.minus(a).cross(c.minus(b)).dot(along);
  }

  /** The part of the way from the axis to a point that is square to the axis. */
  private Vec3 sideways(Vec3 point) {
    Vec3 from = point.minus(pin.axis().origin());
    return from.minus(along.times(from.dot(along)));
  }

  /** Where the line through a point along the axis meets a plane. */
  private Vec3 onto(Plane plane, Vec3 point) {
    return point.along(along, -plane.signedDistance(point) / plane.normal().dot(along));
  }
}
