package gable.reshaper;

import gable.feature.Feature;
import gable.feature.Pin;
import gable.feature.Surroundings;
import gable.feature.TipKind;
import gable.geom.Plane;
import gable.plan.LeftAlone;
import gable.plan.Limits;
import gable.plan.Measure;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshape;
import gable.plan.Reshaper;
import gable.plan.Variant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Chamfers the flat tips of pins at 45 degrees, so that they find their way into a bore and, lying,
 * have no edge below that hangs.
 *
 * <p>The leg is what is asked for, else 0.15 of the diameter, but 0.4 to 1.5 mm; and never more
 * than 0.4 of the radius, so that a flat face stays (estimate; the ends of dowel pins have 0.16 to
 * 0.2 of the diameter along the axis: ISO 8734:1997, table 1).
 */
public final class TipChamfer implements Reshaper {

  private static final double SHARE = 0.15;
  private static final double LEAST = 0.4;
  private static final double MOST = 1.5;
  private static final double OF_RADIUS = 0.4;

  /** Parallel pins are made up to this diameter (ISO 8734:1997, table 1); wider is a body. */
  private static final double WIDEST = 20;

  /** Millimetres; diameters and heights are measured to two micrometres. */
  private static final double SIZE_SLACK = 0.002;

  /** Slack of a cosine for the slope of the tip's face, which the mesh gives to six digits. */
  private static final double FLAT = 1e-6;

  /** For the service loader. */
  public TipChamfer() {}

  @Override
  public String name() {
    return "tip";
  }

  @Override
  public Phase phase() {
    return Phase.TIP;
  }

  @Override
  public String summary() {
    return "chamfers the flat tips of pins at 45 degrees";
  }

  /** The leg for a pin of a radius, in millimetres. */
  static double leg(double radius, Limits.Joint joint) {
    double usual = Math.max(LEAST, Math.min(MOST, SHARE * 2 * radius));
    return Math.min(joint.tip().orElse(usual), OF_RADIUS * radius);
  }

  @Override
  public List<String> settings() {
    return List.of("tip", "slope");
  }

  @Override
  public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
    if (!(feature instanceof Pin pin)) {
      return Optional.empty();
    }
    double leg = leg(pin.radius(), limits.joint());
    Optional<Reason> unfit = unfit(pin, leg, around, limits);
    if (unfit.isPresent()) {
      return Optional.of(new LeftAlone(unfit.get()));
    }
    Plane tip = pin.tipPlane().orElseThrow();
    var tools = new TipTools(pin, tip, leg, around);
    Optional<Reason> obstacle = tools.obstacle(around);
    return Optional.of(
        obstacle.isPresent() ? new LeftAlone(obstacle.get()) : reshape(tools, limits, leg));
  }

  private static Reshape reshape(TipTools tools, Limits limits, double leg) {
    List<Measure> measures =
        List.of(Measure.length("leg", leg), Measure.angle("chamfer", Math.PI / 4));
    return new Reshape(
        List.of(
            new Variant("chamfered", tools.cuts(limits, true), measures),
            new Variant("chamfered", tools.cuts(limits, false), measures)),
        Reason.notProved("the chamfer cannot be cut"));
  }

  private static Optional<Reason> unfit(Pin pin, double leg, Surroundings around, Limits limits) {
    if (pin.tip() != TipKind.FLAT) {
      return Optional.of(tipReason(pin.tip()));
    }
    if (2 * pin.radius() > WIDEST + SIZE_SLACK) {
      return reason(
          "above-widest-pin",
          "diameter %.2f mm is above that of the widest pins, %.2f mm: taken for a body",
          2 * pin.radius(),
          WIDEST);
    }
    if (pin.length() < 2 * leg) {
      return reason(
          "short-pin",
          "it stands out by %.2f mm, less than twice the chamfer of %.2f mm",
          pin.length(),
          leg);
    }
    if (lowest(pin) <= around.lowest() + SIZE_SLACK) {
      return Optional.of(new Reason("on-plate", "it lies on the plate, or stands on its tip"));
    }
    if (-tipNormalZ(pin) > Math.cos(limits.slope()) + FLAT) {
      return reason(
          "points-down",
          "its tip faces down at %.1f degrees, flatter than the slope limit of %.1f: the chamfer"
              + " would hang on a face that needs support",
          Math.toDegrees(Math.acos(Math.min(1, -tipNormalZ(pin)))),
          Math.toDegrees(limits.slope()));
    }
    return Optional.empty();
  }

  private static Reason tipReason(TipKind tip) {
    return tip == TipKind.CHAMFERED || tip == TipKind.CONICAL || tip == TipKind.ROUNDED
        ? new Reason("eased-already", "its tip is " + word(tip) + " already")
        : new Reason("tip-not-flat", "its tip is " + word(tip) + ", and only flat ones are eased");
  }

  private static String word(TipKind tip) {
    return tip.name().toLowerCase(Locale.ROOT);
  }

  private static double tipNormalZ(Pin pin) {
    return pin.tipPlane().orElseThrow().normal().z();
  }

  /** Lowest point of the tip's edge: of a circle about a leaning axis. */
  private static double lowest(Pin pin) {
    double tip = pin.axis().at(pin.length() / 2).z();
    return tip - pin.radius() * Math.cos(pin.tilt());
  }

  private static Optional<Reason> reason(String code, String format, double found, double needed) {
    return Optional.of(new Reason(code, String.format(Locale.ROOT, format, found, needed)));
  }
}
