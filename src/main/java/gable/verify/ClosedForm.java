package gable.verify;

import gable.feature.Bore;
import gable.feature.EndKind;
import gable.feature.Rim;
import gable.feature.Ruling;
import gable.geom.Vec3;
import gable.plan.Intent;
import gable.plan.Operation;
import gable.plan.ToolPlane;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where a bore is a prism between two faces square to its axis, and nothing else is in the way,
 * what a prismatic tool takes away is area times length: the section of the tool without the
 * section of the bore, times the distance of the faces.
 *
 * <p>Tolerance on top of that of the volume: the stray of the rulings and of the rims, times the
 * lengths and areas that they bound.
 */
final class ClosedForm {

  /** Cosine below which a plane counts as parallel to the axis; anything else is an end. */
  private static final double PARALLEL = 1e-9;

  private final Patch patch;
  private final Bore bore;
  private final ToolBody tool;
  private final Slack slack;
  private final Vec3 w;
  private final Vec3 v;
  private final Vec3 u;

  private ClosedForm(Patch patch, Bore bore, ToolBody tool, Slack slack) {
    this.patch = patch;
    this.bore = bore;
    this.tool = tool;
    this.slack = slack;
    this.w = bore.axis().direction();
    this.v = Vec3.Z.minus(w.times(w.z())).unit();
    this.u = v.cross(w);
  }

  /**
   * Compares a change of volume with the closed form where there is one.
   *
   * @param change the change
   * @param tolerance how exactly it is known
   */
  static Optional<Unsound> fault(
      Patch patch, Intent intent, ToolBody tool, Slack slack, double change, double tolerance) {
    boolean applies =
        intent.cut().operation() == Operation.SUBTRACT
            && intent.feature() instanceof Bore bore
            && bore.section().clean()
            && isPrism(tool, bore.axis().direction())
            && bore.tilt() < Math.PI / 4
            && square(bore.low())
            && square(bore.high());
    if (!applies) {
      return Optional.empty();
    }
    var form = new ClosedForm(patch, (Bore) intent.feature(), tool, slack);
    return form.isAlone() ? form.fault(change, tolerance) : Optional.empty();
  }

  /** True if every plane that is not an end is parallel to the axis. */
  private static boolean isPrism(ToolBody tool, Vec3 w) {
    for (int k = 0; k < tool.planes().size(); k++) {
      if (tool.planes().get(k).role() != ToolPlane.Role.END
          && Math.abs(tool.normal(k).dot(w)) > PARALLEL) {
        return false;
      }
    }
    return true;
  }

  private static boolean square(Rim rim) {
    return (rim.kind() == EndKind.OPEN_SQUARE || rim.kind() == EndKind.BLIND_FLAT)
        && rim.plane().isPresent();
  }

  /** True if every facet that goes is of the wall or lies in one of the two end faces. */
  private boolean isAlone() {
    int[] wall = bore.wall();
    for (int f = 0; f < patch.firstAdded(); f++) {
      if (Arrays.binarySearch(wall, patch.id(f)) < 0
          && !inPlane(f, bore.low())
          && !inPlane(f, bore.high())) {
        return false;
      }
    }
    return true;
  }

  private boolean inPlane(int f, Rim rim) {
    double allowed = 2 * rim.planeDeviation() + slack.grid();
    for (int k = 0; k < 3; k++) {
      double distance = rim.plane().orElseThrow().signedDistance(patch.point(f, k));
      if (Math.abs(distance) > allowed) {
        return false;
      }
    }
    return true;
  }

  private Optional<Unsound> fault(double change, double tolerance) {
    ConvexClip section = new ConvexClip();
    section.load(square(4 * tool.box().diagonal()));
    clipToTool(section);
    double around = section.boundary();
    double area = section.area();
    load(section, bore.section().rulings());
    clipToTool(section);
    area -= section.area();
    double length =
        (bore.high().wMin() + bore.high().wMax() - bore.low().wMin() - bore.low().wMax()) / 2;
    double ends =
        bore.high().wMax()
            - bore.high().wMin()
            + bore.low().wMax()
            - bore.low().wMin()
            + 2 * (bore.high().planeDeviation() + bore.low().planeDeviation() + slack.grid());
    double stray = 2 * (bore.section().deviation() + tool.widestSnap() + slack.grid());
    double allowed = tolerance + around * length * stray + area * ends;
    if (Math.abs(change + area * length) <= allowed) {
      return Optional.empty();
    }
    return Fault.of(
        Proof.VOLUME,
        "the volume changes by %.9f mm3; area times length is %.9f (may differ by %.1e)",
        change,
        area * length,
        allowed);
  }

  /** A square about the axis in the section plane, in coordinates of print space. */
  private double[] square(double half) {
    Vec3 o = bore.axis().origin();
    Vec3[] corners = {
      o.along(u, -half).along(v, -half),
      o.along(u, half).along(v, -half),
      o.along(u, half).along(v, half),
      o.along(u, -half).along(v, half)
    };
    double[] flat = new double[12];
    for (int k = 0; k < 12; k++) {
      flat[k] = corners[k / 3].get(k % 3);
    }
    return flat;
  }

  private void load(ConvexClip section, List<Ruling> rulings) {
    section.clear();
    for (Ruling ruling : rulings) {
      Vec3 p = bore.axis().origin().along(u, ruling.u()).along(v, ruling.v());
      section.add(p.x(), p.y(), p.z());
    }
  }

  private void clipToTool(ConvexClip section) {
    for (int k = 0; k < tool.planes().size(); k++) {
      Vec3 n = tool.normal(k);
      if (Math.abs(n.dot(w)) < PARALLEL) {
        section.keep(n.x(), n.y(), n.z(), n.dot(tool.apex()) - tool.distance(k, Vec3.ZERO));
      }
    }
  }
}
