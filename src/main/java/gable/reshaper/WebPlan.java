package gable.reshaper;

import gable.feature.Partner;
import gable.feature.Pin;
import gable.feature.Surroundings;
import gable.feature.TipKind;
import gable.geom.Vec3;
import gable.plan.Cut;
import gable.plan.LeftAlone;
import gable.plan.Limits;
import gable.plan.Limits.Joint.Webs;
import gable.plan.Measure;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshape;
import gable.plan.Variant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What is to be done to one pin so that it hangs no more: its webs, or why there are none. */
final class WebPlan {

  /** A web leans from straight down by less than this, in radians, or it carries nothing. */
  private static final double LEANS = Math.toRadians(5);

  private final Pin pin;
  private final Surroundings around;
  private final Limits limits;
  private final double leg;
  private final double sag;

  WebPlan(Pin pin, Surroundings around, Limits limits) {
    this.pin = pin;
    this.around = around;
    this.limits = limits;
    this.leg = TipChamfer.leg(pin.radius(), limits.joint());
    int sides = pin.outline().isEmpty() ? pin.facetsPerTurn() : pin.outline().size();
    double half = limits.joint().webWidth() / 2;
    this.sag = WebShape.sag(pin.radius(), sides, half) + pin.residual();
  }

  Proposal proposal() {
    Optional<Partner> partner = around.partner(pin);
    Optional<Pin.Rib> rib = pin.ribs().stream().filter(this::carries).findFirst();
    if (rib.isPresent()) {
      return new LeftAlone(new StandingWeb(pin, around, limits).reason(rib.get()));
    }
    if (partner.isEmpty()) {
      return left(
          "not-paired",
          "no bore is known that it goes into, and a web without a slot would block the joint");
    }
    Optional<Reason> unfit = unfit();
    if (unfit.isPresent()) {
      return new LeftAlone(unfit.get());
    }
    return partner
        .get()
        .web()
        .map(this::webs)
        .orElseGet(
            () ->
                left(
                    "no-slot",
                    "the bore that it goes into can have no slot, and a web without a slot would"
                        + " block the joint"));
  }

  private static Proposal left(String code, String sentence) {
    return new LeftAlone(new Reason(code, sentence));
  }

  private Optional<Reason> unfit() {
    double tiltDeg = Math.toDegrees(pin.tilt());
    if (pointsDown() >= limits.slope() - WebShape.TILT_SLACK) {
      return Optional.of(
          new Reason("points-down", "it points down, where a web would not carry its tip"));
    }
    if (pin.tilt() >= limits.slope() - WebShape.TILT_SLACK) {
      return reason(
          "steep-enough",
          "the axis rises by %.1f degrees, at or above the slope limit of %.1f: it needs no web",
          tiltDeg,
          Math.toDegrees(limits.slope()));
    }
    if (pointsDown() > WebShape.TILT_SLACK) {
      return reason(
          "points-down",
          "its axis points down by %.1f degrees, and a web that allows for more than %.2f would not"
              + " fit the slot",
          tiltDeg,
          Math.toDegrees(WebShape.TILT_SLACK));
    }
    if (pin.length() < 2 * leg) {
      return reason(
          "short-pin",
          "it stands out by %.2f mm, less than twice the chamfer of %.2f mm",
          pin.length(),
          leg);
    }
    double wide = limits.joint().webWidth();
    if (wide > WebShape.THICKEST * 2 * pin.radius()) {
      return reason(
          "web-too-thick",
          "a web of %.2f mm is more than %.2f mm, 0.7 of the pin's diameter",
          wide,
          WebShape.THICKEST * 2 * pin.radius());
    }
    return lowest() <= around.lowest() + WebShape.SIZE_SLACK
        ? Optional.of(new Reason("on-plate", "it lies on the plate"))
        : Optional.empty();
  }

  /** Whether a rib stands below the pin, or above where webs are wanted on both sides. */
  private boolean carries(Pin.Rib rib) {
    return -rib.direction().z() > Math.cos(LEANS + pin.tilt());
  }

  private double pointsDown() {
    return Math.max(0, -Math.asin(pin.axis().direction().z()));
  }

  private double lowest() {
    double half = pin.length() / 2;
    double middle = Math.min(pin.axis().at(half).z(), pin.axis().at(-half).z());
    return middle - pin.radius() * Math.cos(pin.tilt());
  }

  private static Optional<Reason> reason(String code, String format, double found, double needed) {
    return Optional.of(new Reason(code, String.format(Locale.ROOT, format, found, needed)));
  }

  private Proposal webs(Vec3 down) {
    WebFrame frame = WebFrame.of(pin.axis().at(-pin.length() / 2), pin.axis().direction(), down);
    if (-frame.down().z() < Math.cos(LEANS + pin.tilt())) {
      return left("web-leans", "in this joint the web would not stand below the pin");
    }
    WebShape web = shape();
    if (!(web.end() > pin.rootFlare() + WebShape.REST)) {
      return left("short-pin", "its round part is too short for a web to carry it");
    }
    List<PinWeb> webs = new ArrayList<>();
    webs.add(new PinWeb(pin, around, web, frame, sag));
    if (limits.joint().webs() == Webs.BOTH) {
      webs.add(new PinWeb(pin, around, web, frame.turned(), sag));
    }
    for (PinWeb each : webs) {
      Optional<Reason> obstacle = each.obstacle();
      if (obstacle.isPresent()) {
        return new LeftAlone(obstacle.get());
      }
    }
    return new Reshape(
        ladder(web, webs), Reason.notProved("the web cannot be joined to pin and wall"));
  }

  /**
   * The web of this pin: never longer than the one for which the bore has its slot. It ends farther
   * from the tip where a tip that is eased already begins earlier, where the surface of a coarse
   * pin lies so far inside its circle that the body would come out at the tip, and where a rounding
   * at the root keeps the pin that much out of the bore.
   */
  private WebShape shape() {
    WebShape longest = WebShape.of(pin.radius(), pin.length(), limits);
    double within = (sag + PinWeb.TOP) / Math.tan(limits.slope());
    double end = Math.min(longest.end(), pin.wallLength() - WebShape.REST) - pin.rootReach();
    double last = pin.wallLength() - (pin.tip() == TipKind.FLAT ? leg : 0);
    return longest.endingAt(Math.min(end, last - within)).at(longest.angle() + pointsDown());
  }

  private List<Variant> ladder(WebShape web, List<PinWeb> webs) {
    double free = pin.wallLength() - web.end() - (pin.tip() == TipKind.FLAT ? leg : 0);
    List<Measure> measures =
        List.of(
            Measure.length("web-width", 2 * web.half()),
            Measure.length("web-height", webs.get(0).height() - pin.radius()),
            Measure.angle("web-slope", web.angle()),
            Measure.length("free-length", free));
    List<Variant> ladder = new ArrayList<>();
    for (double nudge : WebShape.NUDGES) {
      List<Cut> cuts = webs.stream().map(each -> each.cut(nudge)).toList();
      ladder.add(new Variant(webs.size() == 1 ? "lower" : "lower-and-upper", cuts, measures));
    }
    return ladder;
  }
}
