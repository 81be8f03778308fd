package gable.reshaper;

import gable.feature.Bore;
import gable.feature.BoreShape;
import gable.feature.Partner;
import gable.feature.Surroundings;
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

/**
 * What is to be done to one bore so that a pin with its web goes in: slots, or why none are.
 *
 * <p>Pieces of one bore, such as two lugs, get one slot each as if the web began at each of them:
 * it is highest where it begins, so the slot is deep enough wherever the piece is.
 */
final class SlotPlan {

  private final Bore bore;
  private final Partner partner;
  private final Surroundings around;
  private final Limits limits;
  private final WebShape web;
  private final double room;
  private final boolean both;

  SlotPlan(Bore bore, Partner partner, Surroundings around, Limits limits) {
    this.bore = bore;
    this.partner = partner;
    this.around = around;
    this.limits = limits;
    this.web = WebShape.of(partner.radius(), partner.length(), limits);
    this.room = limits.joint().clearance();
    this.both = limits.joint().webs() == Webs.BOTH;
  }

  Proposal proposal() {
    return unfit().<Proposal>map(LeftAlone::new).orElseGet(this::slots);
  }

  private Optional<Reason> unfit() {
    if (partner.web().isEmpty()) {
      return reason("no-web", "the pin that goes into it can have no web, so it needs no slot");
    }
    if (bore.shape() != BoreShape.ROUND && bore.shape() != BoreShape.PEAKED) {
      return reason("not-round", "only round and roofed bores are slotted");
    }
    if (width() > WebShape.THICKEST * 2 * bore.radius()) {
      return reason(
          "web-too-thick",
          "a slot of %.2f mm is more than %.2f mm, 0.7 of the bore's diameter",
          width(),
          WebShape.THICKEST * 2 * bore.radius());
    }
    if (!(web.end() > WebShape.REST)) {
      return reason("short-pin", "the pin that goes into it is too short to need a web");
    }
    return mouths() == 0
        ? reason("no-mouth", "no end of it is open to the outside")
        : Optional.empty();
  }

  private static Optional<Reason> reason(String code, String format, Object... values) {
    return Optional.of(new Reason(code, String.format(Locale.ROOT, format, values)));
  }

  private double width() {
    return 2 * (web.half() + room);
  }

  private int mouths() {
    return (BoreSlot.isMouth(bore.low()) ? 1 : 0) + (BoreSlot.isMouth(bore.high()) ? 1 : 0);
  }

  private Proposal slots() {
    int side = BoreSlot.isMouth(bore.low()) ? -1 : 1;
    double face = new MouthFace(bore, around, partner.web().orElseThrow(), side).at();
    WebFrame frame =
        WebFrame.of(
            bore.axis().at(face),
            bore.axis().direction().times(-side),
            partner.web().orElseThrow());
    boolean through = mouths() == 2;
    List<BoreSlot> slots = new ArrayList<>();
    slots.add(new BoreSlot(bore, around, web.grown(room), frame, through));
    if (both) {
      slots.add(new BoreSlot(bore, around, web.grown(room), frame.turned(), through));
    }
    return passed(slots, new SlotPassage(around, frame, web, both));
  }

  private Proposal passed(List<BoreSlot> slots, SlotPassage passage) {
    double to = Math.min(bore.length(), partner.length());
    if (passage.isThere(to, width() / 2, slots.get(0)::floor, WebShape.slack(room))) {
      return left(
          Reason.ROOM_ENOUGH,
          "the pin with its web passes as it is, with %.2f mm to spare",
          passage.least(to, 0, x -> 0));
    }
    double least = passage.least(to, width() / 2, slots.get(0)::floor);
    if (!(least >= 0)) {
      return left(
          "blocked",
          "the pin with its web would not pass through bore and slot: it is %.2f mm too wide",
          -least);
    }
    for (int k = 0; k < slots.size(); k++) {
      double hangs = slots.get(k).hangs(limits);
      if (hangs < limits.slope() - WebShape.TILT_SLACK) {
        return left(
            "slot-hangs",
            "a slot that way would have a ceiling of %.1f degrees, flatter than the slope limit of"
                + " %.1f",
            Math.toDegrees(hangs),
            Math.toDegrees(limits.slope()));
      }
      // a chamfer moves the ridge of a roof by more than its leg, by 1.41 times it at 45 degrees
      double reach = passage.extent(to / 2, k == 0 ? 1 : -1) + 2 * limits.joint().leadIn();
      if (!slots.get(k).leaves(limits.leastRoof(), reach)) {
        return left(
            "thin-wall",
            "beside a slot that is %.2f mm wide and reaches %.2f mm from the axis less than the"
                + " least wall of %.2f mm would be left",
            width(),
            slots.get(k).floor(0),
            limits.leastRoof());
      }
    }
    return new Reshape(ladder(slots, least), Reason.notProved("the slot cannot be cut"));
  }

  private static Proposal left(String code, String format, Object... values) {
    return new LeftAlone(reason(code, format, values).orElseThrow());
  }

  private List<Variant> ladder(List<BoreSlot> slots, double least) {
    List<Measure> measures = new ArrayList<>();
    measures.add(Measure.length("slot-width", width()));
    measures.add(Measure.length("slot-depth", slots.get(0).floor(0) - bore.radius()));
    measures.add(Measure.length("least-clearance", least));
    if (slots.stream().anyMatch(slot -> slot.bridges(limits))) {
      measures.add(Measure.length("bridge", width()));
    }
    List<Variant> ladder = new ArrayList<>();
    for (double nudge : WebShape.NUDGES) {
      List<Cut> cuts = slots.stream().map(slot -> slot.cut(nudge, limits)).toList();
      ladder.add(new Variant(slots.size() == 1 ? "slot" : "two-slots", cuts, measures));
    }
    return ladder;
  }
}
