package gable.reshaper;

import gable.feature.Pin;
import gable.feature.Surroundings;
import gable.feature.Surroundings.Passage;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.plan.ConvexTool;
import gable.plan.Cut;
import gable.plan.Operation;
import gable.plan.Reason;
import gable.plan.ToolPlane;
import gable.plan.ToolPlane.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One web on a pin: where it finds the wall, what is in its way, and the body that is added.
 *
 * <p>The body reaches into the pin and into the wall, whatever the wall's shape: its top lies below
 * the surface of the pin, its back a little behind every place at which lines along the axis were
 * found to enter the wall. Both are meant to be inside, and the proof refuses a body of which they
 * show.
 */
final class PinWeb {

  /** How deep the back stands in the wall, in millimetres: less than the thinnest walls in use. */
  private static final double DEPTH = 0.3;

  /** How deep the top stands in the pin, in millimetres: far above the grid, far below a pin. */
  static final double TOP = 0.05;

  /** What is nearer than this, in millimetres, prints as one: half a line of 0.4 (practice). */
  private static final double APART = 0.2;

  /** How far below the pin lines start, in millimetres: off its surface. */
  private static final double BELOW = 0.02;

  /** Height of the web's foot above the plate, in millimetres: no face of it lies in another. */
  private static final double OFF_PLATE = 0.004;

  /** Lines on which the wall is felt. */
  private static final int LINES = 24;

  /**
   * Least sine of the angle at which a line along the axis may enter the wall: about 11 degrees.
   */
  private static final double FACING = 0.2;

  /** A step of the wall along the axis between two lines that is no slope but an edge, per step. */
  private static final double STEEPEST = 6;

  private final Surroundings around;
  private final double first;
  private final WebShape web;
  private final WebFrame frame;
  private final double sag;
  private final List<double[]> entries = new ArrayList<>();
  private double lowestY = Double.POSITIVE_INFINITY;

  /**
   * A web.
   *
   * @param sag how far the pin's own surface lies within its circle under the web at most
   */
  PinWeb(Pin pin, Surroundings around, WebShape web, WebFrame frame, double sag) {
    // a rounding at the root is no wall: the lines start below it
    this.first = pin.radius() + pin.rootFlare() + BELOW;
    this.around = around;
    this.web = web;
    this.frame = frame;
    this.sag = sag;
  }

  /** Why there can be no web here; nothing if there can. To be asked before the others. */
  Optional<Reason> obstacle() {
    Optional<Reason> lost = feelUnderside();
    if (lost.isPresent()) {
      return lost;
    }
    double deepest = height();
    Optional<Reason> why = Optional.empty();
    for (double z : new double[] {-web.half(), 0, web.half()}) {
      why = why.isPresent() ? why : feelWall(z, deepest);
    }
    return why.isPresent() ? why : crowded(deepest);
  }

  /** How far from the axis the web is where it meets the wall, or stands on the plate. */
  double height() {
    double deepest = entries.stream().mapToDouble(entry -> entry[1]).max().orElse(lowestY);
    return Math.min(deepest, lowestY);
  }

  /** Lines along the underside, down to the wall or to the plate. */
  private Optional<Reason> feelUnderside() {
    Vec3 way = frame.direction(-Math.cos(web.angle()), Math.sin(web.angle()));
    double plate = (frame.origin().z() - around.lowest()) / Math.max(1e-9, -frame.down().z());
    lowestY = frame.down().z() < 0 ? plate - OFF_PLATE : Double.POSITIVE_INFINITY;
    for (double z : new double[] {-web.half(), 0, web.half()}) {
      double y = web.radius() + BELOW;
      Vec3 start = frame.point(web.under(y), y, z);
      if (around.winding(start) != 0) {
        return touching();
      }
      double length = 4 * (web.end() + web.radius());
      List<Passage> passages = around.passages(start, way, length);
      double reach = passages.isEmpty() ? length : passages.get(0).at();
      boolean standing = start.along(way, reach).z() < around.lowest() + OFF_PLATE;
      if (!standing && passages.isEmpty()) {
        return noWall();
      }
      if (!standing) {
        double entered = y + reach * Math.sin(web.angle());
        entries.add(new double[] {web.under(entered), entered});
      }
    }
    return Optional.empty();
  }

  /** Lines along the axis from the underside to the wall. */
  private Optional<Reason> feelWall(double z, double deepest) {
    double step = (deepest - first - BELOW) / LINES;
    double before = Double.NaN;
    for (int k = 0; k <= LINES; k++) {
      double y = first + k * step;
      double from = web.under(y) - BELOW / 8 / Math.tan(web.angle());
      Vec3 start = frame.point(from, y, z);
      if (around.winding(start) != 0) {
        return touching();
      }
      List<Passage> passages =
          around.passages(start, frame.along().times(-1), 4 * (web.end() + web.radius()));
      if (passages.isEmpty() || passages.get(0).normal().dot(frame.along()) < FACING) {
        return noWall();
      }
      double x = from - passages.get(0).at();
      if (Math.abs(x - before) > STEEPEST * step + BELOW) {
        return noWall();
      }
      before = x;
      entries.add(new double[] {x, y});
    }
    return Optional.empty();
  }

  private static Optional<Reason> touching() {
    return Optional.of(
        new Reason("touching", "something touches the pin where its web would stand"));
  }

  private static Optional<Reason> noWall() {
    return Optional.of(
        new Reason(
            "no-wall",
            "the wall beside the pin ends before a web at the slope limit would reach it, or is"
                + " uneven there"));
  }

  /** Whether something stands so near that it prints as one with the web. */
  private Optional<Reason> crowded(double deepest) {
    Vec3 out = frame.direction(Math.sin(web.angle()), Math.cos(web.angle()));
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k <= LINES; k++) {
      double y = web.radius() + BELOW + k * (deepest - web.radius() - BELOW) / LINES;
      double wall = entries.stream().mapToDouble(entry -> entry[0]).max().orElse(0);
      for (double share : new double[] {0.02, 0.5}) {
        double x = web.under(y) - share * (web.under(y) - wall);
        if (x < wall + 2 * APART) {
          continue;
        }
        Vec3 middle = frame.point(x, y, 0);
        for (int sign = -1; sign <= 1; sign += 2) {
          double gap = first(middle, frame.side().times(sign), web.half() + APART) - web.half();
          least = Math.min(least, gap);
        }
        if (share < 0.5) {
          least = Math.min(least, first(middle, out, APART));
        }
      }
    }
    return least >= APART
        ? Optional.empty()
        : Optional.of(Reason.tooClose("where the web would be", least, APART));
  }

  private double first(Vec3 from, Vec3 direction, double length) {
    List<Passage> passages = around.passages(from, direction, length);
    return passages.isEmpty() ? Double.POSITIVE_INFINITY : passages.get(0).at();
  }

  /**
   * The body.
   *
   * @param nudge how much thicker it is on each side than is meant, in millimetres: a hair, where
   *     its sides would run along an edge of the pin
   */
  Cut cut(double nudge) {
    double top = web.radius() - sag - TOP;
    List<ToolPlane> planes = new ArrayList<>();
    planes.add(new ToolPlane(frame.underside(web), 0, Role.FLANK));
    planes.add(new ToolPlane(frame.beside(web.half() + nudge), 0, Role.FLANK));
    planes.add(new ToolPlane(frame.beside(-web.half() - nudge), 0, Role.FLANK));
    planes.add(new ToolPlane(frame.plane(0, top, 0, -1), 0, Role.BASE));
    planes.add(new ToolPlane(back(), 0, Role.BASE));
    if (lowestY < height() + DEPTH) {
      Plane foot = Plane.through(new Vec3(0, 0, around.lowest() + OFF_PLATE), new Vec3(0, 0, -1));
      planes.add(new ToolPlane(foot, 0, Role.END));
    }
    Vec3 near = frame.point(web.end() / 2, web.radius(), 0);
    double size = 20 * (web.end() + web.radius() + height());
    return new Cut(Operation.ADD, ConvexTool.of(planes, near, size));
  }

  /** Behind every place where the wall was felt, along the chord from its top to its foot. */
  private Plane back() {
    double[] upper = entries.get(0);
    double[] lower = entries.get(0);
    for (double[] entry : entries) {
      upper = entry[1] < upper[1] ? entry : upper;
      lower = entry[1] > lower[1] ? entry : lower;
    }
    double nx = -(lower[1] - upper[1]);
    double ny = lower[0] - upper[0];
    double[] farthest = upper;
    for (double[] entry : entries) {
      farthest =
          nx * entry[0] + ny * entry[1] > nx * farthest[0] + ny * farthest[1] ? entry : farthest;
    }
    return frame.plane(farthest[0], farthest[1], nx, ny).moved(DEPTH);
  }
}
