package drain;

import gable.feature.Bore;
import gable.feature.BoreShape;
import gable.feature.EndKind;
import gable.feature.Feature;
import gable.feature.Surroundings;
import gable.feature.Surroundings.Passage;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.plan.ConvexTool;
import gable.plan.Cut;
import gable.plan.LeftAlone;
import gable.plan.Limits;
import gable.plan.Measure;
import gable.plan.Operation;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshape;
import gable.plan.Reshaper;
import gable.plan.ToolPlane;
import gable.plan.ToolPlane.Role;
import gable.plan.Variant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * An example of a reshaper that is not part of Gable: cuts a groove along the floor of a through
 * bore, so that water runs out.
 *
 * <p>The groove is one convex body that is taken away: a prism with a triangle as its section. In
 * the frame of the section (u sideways, v upwards, in radii of the bore) the triangle has the
 * corners (-0.25, -0.9), (0.25, -0.9) and (0, -1.2): its upper side lies in the void of the bore,
 * its two flanks go down through the wall. Nothing hangs: the new faces look upwards.
 */
public final class Drain implements Reshaper {

  private static final double HALF = 0.25;
  private static final double TOP = 0.9;
  private static final double DEPTH = 1.2;

  /** How far the groove goes on beyond the mouths, in radii, to come out of them for certain. */
  private static final double BEYOND = 0.5;

  /** For the service loader. */
  public Drain() {}

  @Override
  public String name() {
    return "drain";
  }

  @Override
  public Phase phase() {
    return Phase.SLOT;
  }

  @Override
  public String summary() {
    return "cuts a groove along the floor of through bores, so that water runs out";
  }

  @Override
  public List<String> settings() {
    return List.of("least-roof");
  }

  @Override
  public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
    if (!(feature instanceof Bore bore) || bore.shape() != BoreShape.ROUND) {
      return Optional.empty(); // not its business
    }
    if (bore.tilt() > Math.PI / 6 || !isSquare(bore)) {
      Reason reason = new Reason("no-through-bore", "only level bores through flat faces drain");
      return Optional.of(new LeftAlone(reason));
    }
    double left = below(bore, around) - (DEPTH - 1) * bore.radius();
    if (left < limits.leastRoof()) {
      String words =
          String.format(
              Locale.ROOT,
              "the groove would leave %.2f mm below it, less than %.2f mm",
              left,
              limits.leastRoof());
      return Optional.of(new LeftAlone(new Reason("thin-floor", words)));
    }
    Measure depth = Measure.length("groove-depth", (DEPTH - 1) * bore.radius());
    Variant groove =
        new Variant(
            "v-shaped", List.of(new Cut(Operation.SUBTRACT, tool(bore))), List.of(depth));
    return Optional.of(new Reshape(List.of(groove), Reason.notProved("no groove can be cut")));
  }

  private static boolean isSquare(Bore bore) {
    return bore.low().kind() == EndKind.OPEN_SQUARE && bore.high().kind() == EndKind.OPEN_SQUARE;
  }

  /** Least thickness of the solid below the bore, at its middle and near its ends. */
  private static double below(Bore bore, Surroundings around) {
    double least = Double.POSITIVE_INFINITY;
    for (double share : new double[] {-0.49, 0, 0.49}) {
      Vec3 from = bore.axis().at(share * bore.length());
      List<Passage> down = around.passages(from, upwards(bore).times(-1), around.size());
      if (down.size() >= 2) {
        least = Math.min(least, down.get(1).at() - down.get(0).at());
      }
    }
    return Double.isInfinite(least) ? 0 : least;
  }

  private static Vec3 upwards(Bore bore) {
    Vec3 w = bore.axis().direction();
    return Vec3.Z.minus(w.times(w.z())).unit();
  }

  private static ConvexTool tool(Bore bore) {
    double r = bore.radius();
    Vec3 middle = bore.axis().origin();
    Vec3 w = bore.axis().direction();
    Vec3 v = upwards(bore);
    Vec3 u = v.cross(w);
    Vec3 apex = middle.plus(v.times(-DEPTH * r));
    double reach = bore.length() / 2 + BEYOND * r;
    // the flanks first: see ConvexTool about the order of planes
    List<ToolPlane> planes =
        List.of(
            plane(apex, u.times(DEPTH - TOP).minus(v.times(HALF)), Role.FLANK),
            plane(apex, u.times(TOP - DEPTH).minus(v.times(HALF)), Role.FLANK),
            plane(middle.plus(v.times(-TOP * r)), v, Role.BASE),
            plane(middle.plus(w.times(-reach)), w.times(-1), Role.END),
            plane(middle.plus(w.times(reach)), w, Role.END));
    return ConvexTool.of(planes, middle.plus(v.times(-r)), 2 * (r + bore.length()));
  }

  private static ToolPlane plane(Vec3 point, Vec3 outwards, Role role) {
    return new ToolPlane(Plane.through(point, outwards.unit()), 0, role);
  }
}
