package gable.reshaper;

import gable.feature.Pin;
import gable.feature.Surroundings;
import gable.feature.Surroundings.Passage;
import gable.geom.Vec3;
import gable.plan.Limits;
import gable.plan.Limits.Joint.Webs;
import gable.plan.Reason;
import java.util.List;
import java.util.Locale;

/**
 * A web that a pin has already: whether the slot that its bore would get is large enough for it. If
 * it is, the joint counts as one whose web is made, so that the bore of a pin that was reshaped
 * before still gets its slot.
 */
final class StandingWeb {

  /** How far behind a face one looks for what it belongs to, in millimetres. */
  private static final double BEHIND = 0.1;

  private final Pin pin;
  private final Surroundings around;
  private final Limits limits;
  private final WebShape web;
  private final double slack;

  StandingWeb(Pin pin, Surroundings around, Limits limits) {
    this.pin = pin;
    this.around = around;
    this.limits = limits;
    this.web = WebShape.of(pin.radius(), pin.length(), limits);
    this.slack = WebShape.slack(limits.joint().clearance());
  }

  /** Why the pin gets no other web. */
  Reason reason(Pin.Rib rib) {
    if (!fits(rib)) {
      return new Reason(
          "other-web",
          String.format(
              Locale.ROOT,
              "a rib of %.2f mm stands below it already, which is not the web that the slot in its"
                  + " bore would be made for",
              rib.width()));
    }
    return new Reason(Reason.HAS_WEB, "it has its web already");
  }

  private boolean fits(Pin.Rib rib) {
    double slope = Math.tan(web.angle());
    double end = web.end() + slack + (pin.residual() + sag()) / slope;
    boolean sized = rib.width() <= 2 * web.half() + slack && rib.end() <= end && isFree(rib);
    boolean both = limits.joint().webs() == Webs.BOTH;
    // a second one needs a slot of its own
    return sized && (both ? pin.ribs().size() == 2 : pin.ribs().size() == 1);
  }

  /** The underside meets a coarse pin within its circle, nearer to the tip. */
  private double sag() {
    int sides = pin.outline().isEmpty() ? pin.facetsPerTurn() : pin.outline().size();
    return WebShape.sag(web.radius(), sides, web.half());
  }

  /** Whether nothing of the rib is below the underside of the web. */
  private boolean isFree(Pin.Rib rib) {
    WebFrame frame =
        WebFrame.of(pin.axis().at(-pin.length() / 2), pin.axis().direction(), rib.direction());
    Vec3 way = frame.direction(-Math.cos(web.angle()), Math.sin(web.angle()));
    double y = web.radius() + slack;
    for (double z : new double[] {-web.half() / 2, 0, web.half() / 2}) {
      Vec3 start = frame.point(web.under(y) + slack, y, z);
      List<Passage> passages = around.passages(start, way, web.end() / Math.cos(web.angle()));
      if (around.winding(start) != 0
          || (!passages.isEmpty()
              && !isWall(
                  frame, start.along(way, passages.get(0).at() + BEHIND), rib.width() / 2))) {
        return false;
      }
    }
    return true;
  }

  /** Whether a place belongs to something that is wider than the rib. */
  private boolean isWall(WebFrame frame, Vec3 place, double half) {
    Vec3 aside = frame.side().times(half + BEHIND);
    return around.winding(place.plus(aside)) != 0 && around.winding(place.minus(aside)) != 0;
  }
}
