package gable.reshaper;

import gable.feature.Bore;
import gable.feature.EndKind;
import gable.feature.Rim;
import gable.feature.Surroundings;
import gable.feature.Surroundings.Passage;
import gable.geom.Box3;
import gable.geom.ConvexSolid;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.plan.ConvexTool;
import gable.plan.Cut;
import gable.plan.Limits;
import gable.plan.Operation;
import gable.plan.ToolPlane;
import gable.plan.ToolPlane.Role;
import java.util.ArrayList;
import java.util.List;

/**
 * The slot in a bore for the web of the pin that goes into it.
 *
 * <p>In a bore with one open end it is the web itself, grown by the clearance. A bore that is open
 * at both ends may be entered from either, so the slot runs all through it, everywhere as deep as
 * the web is at its highest: the pin goes in from both sides, at the price of more material.
 */
final class BoreSlot {

  /** How far into the void of the bore the slot reaches, in millimetres: far above the grid. */
  private static final double TOP = 0.05;

  /** How far past a mouth it reaches at most, in millimetres; only air is there. */
  private static final double PAST = 0.2;

  /** How far behind the mouth the walls are looked at first, in millimetres. */
  private static final double BEHIND = 0.01;

  private final Bore bore;
  private final Surroundings around;
  private final WebShape slot;
  private final WebFrame frame;
  private final boolean through;
  private final int side;

  /**
   * A slot.
   *
   * @param slot the web with its clearance
   * @param frame where it is: the mouth, inwards, and towards the web
   * @param through whether the other end is open, too
   */
  BoreSlot(Bore bore, Surroundings around, WebShape slot, WebFrame frame, boolean through) {
    this.bore = bore;
    this.around = around;
    this.slot = slot;
    this.frame = frame;
    this.side = frame.along().dot(bore.axis().direction()) > 0 ? -1 : 1;
    this.through = through;
  }

  /** True for an end through which a pin can go in from outside. */
  static boolean isMouth(Rim rim) {
    return !rim.kind().isBlind()
        && rim.kind() != EndKind.NARROWING
        && rim.kind() != EndKind.STEP
        && rim.kind() != EndKind.THREADED;
  }

  /** How far from the axis the floor is at a depth. */
  double floor(double x) {
    return through ? slot.height(0) : Math.max(0, slot.height(x));
  }

  /** True if it faces down where it is flat, so that it is a bridge. */
  boolean bridges(Limits limits) {
    return through && frame.down().z() > Math.cos(limits.slope());
  }

  /**
   * Slope of its flattest face that hangs, bridges apart, from the horizontal; a wall's if none.
   */
  double hangs(Limits limits) {
    double most = Math.abs(frame.side().z());
    if (!bridges(limits)) {
      most = Math.max(most, floorPlane().normal().z());
    }
    return Math.acos(Math.min(1, Math.max(0, most)));
  }

  private Plane floorPlane() {
    return through ? frame.plane(0, slot.height(0), 0, 1) : frame.underside(slot);
  }

  /**
   * Whether the walls beside and below the slot are thick enough: the solid must fill the slot
   * grown by the least wall, from a hair behind the mouth on, beyond all that the bore is already.
   *
   * @param outermost how far the bore reaches from its axis beside the slot
   */
  boolean leaves(double wall, double outermost) {
    double deepest = floor(0) + wall;
    if (deepest <= outermost) {
      return true;
    }
    List<Plane> body = new ArrayList<>();
    body.add(floorPlane().moved(wall));
    body.add(frame.beside(slot.half() + wall));
    body.add(frame.beside(-slot.half() - wall));
    body.add(frame.plane(0, outermost, 0, -1));
    Plane mouth = inside(side < 0 ? bore.low() : bore.high());
    body.add(mouth);
    body.add(
        through
            ? inside(side < 0 ? bore.high() : bore.low())
            : frame.plane(slot.under(outermost) + 2 * wall + slot.radius(), 0, 1, 0));
    double size = 20 * (bore.radius() + bore.length() + deepest);
    Vec3 near = frame.point(slot.end() / 2, outermost, 0);
    ConvexSolid solid = ConvexSolid.of(body, near, size);
    if (solid.isEmpty()) {
      return true;
    }
    Box3 box = solid.box();
    Vec3 sum = Vec3.ZERO;
    List<Vec3> points = solid.points();
    for (Vec3 point : points) {
      sum = sum.plus(point);
    }
    return around.fills(body, box, sum.times(1.0 / points.size()));
  }

  /** A hair behind a mouth, normal out of the bore. */
  private Plane inside(Rim rim) {
    Vec3 w = bore.axis().direction();
    boolean low = rim == bore.low();
    Vec3 outward = low ? w.times(-1) : w;
    if (rim.plane().isPresent() && rim.kind() != EndKind.OPEN_CURVED) {
      return rim.plane().get().moved(-BEHIND);
    }
    double innermost = low ? rim.wMax() : rim.wMin();
    return Plane.through(bore.axis().at(innermost), outward).moved(-BEHIND);
  }

  /**
   * The cut.
   *
   * @param nudge how much wider it is on each side than is meant
   */
  Cut cut(double nudge, Limits limits) {
    double sag = WebShape.sag(bore.radius(), bore.facetsPerTurn(), slot.half() + nudge);
    double top = bore.radius() - sag - bore.residual() - TOP;
    List<ToolPlane> planes = new ArrayList<>();
    Role floor = bridges(limits) ? Role.BRIDGE : Role.FLANK;
    planes.add(new ToolPlane(floorPlane(), 0, floor));
    planes.add(new ToolPlane(frame.beside(slot.half() + nudge), 0, Role.FLANK));
    planes.add(new ToolPlane(frame.beside(-slot.half() - nudge), 0, Role.FLANK));
    planes.add(new ToolPlane(frame.plane(0, top, 0, -1), 0, Role.BASE));
    planes.add(new ToolPlane(past(side), 0, Role.END));
    if (through) {
      planes.add(new ToolPlane(past(-side), 0, Role.END));
    }
    Vec3 near = frame.point(Math.max(0, slot.end()) / 2, bore.radius(), 0);
    double size = 20 * (bore.radius() + bore.length() + slot.height(0));
    return new Cut(Operation.SUBTRACT, ConvexTool.of(planes, near, size));
  }

  /** The end of the slot in the air before a mouth: past its surface over the whole slot. */
  private Plane past(int end) {
    Vec3 outward = bore.axis().direction().times(end);
    Rim rim = end < 0 ? bore.low() : bore.high();
    double from = end < 0 ? -rim.wMax() : rim.wMin();
    from = Math.max(from - bore.radius(), BEHIND - bore.length() / 2);
    double reach = Math.max(end * rim.outerW(), end < 0 ? -rim.wMin() : rim.wMax());
    double margin = PAST;
    double top = bore.radius() + TOP;
    for (double share : new double[] {0, 0.25, 0.5, 0.75, 1}) {
      for (double z : new double[] {-slot.half(), 0, slot.half()}) {
        double y = top + share * (Math.max(floor(0), top) - top);
        Vec3 start = bore.axis().at(end * from).along(frame.down(), y).along(frame.side(), z);
        List<Passage> passages = around.passages(start, outward, around.size());
        if (!passages.isEmpty() && passages.get(0).leaves()) {
          reach = Math.max(reach, from + passages.get(0).at());
          double gap = passages.size() > 1 ? passages.get(1).at() - passages.get(0).at() : 2 * PAST;
          margin = Math.min(margin, Math.max(gap / 2, 1e-3));
        }
      }
    }
    return Plane.through(bore.axis().at(end * (reach + margin)), outward);
  }
}
