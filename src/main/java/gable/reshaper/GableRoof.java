package gable.reshaper;

import gable.feature.Bore;
import gable.feature.BoreShape;
import gable.feature.EndKind;
import gable.feature.Feature;
import gable.feature.Rim;
import gable.feature.ScrewSeat;
import gable.feature.Surroundings;
import gable.plan.Cut;
import gable.plan.LeftAlone;
import gable.plan.Limits;
import gable.plan.Measure;
import gable.plan.Operation;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshape;
import gable.plan.Reshaper;
import gable.plan.Variant;
import gable.section.RoofProfile;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Gives a horizontal bore a peaked roof, or a flat-topped one where the material above does not
 * allow a full peak.
 *
 * <p>The flanks climb at the slope limit s, tilt t of the axis taken into account: in the section
 * square to the axis they climb at α with cos α = cos s / cos t, which makes their true slope s
 * (derived; at t = 0 α = s). They are supporting lines of the bore's own outline, polygon or not.
 */
public final class GableRoof implements Reshaper {

  /** For the service loader. */
  public GableRoof() {}

  @Override
  public String name() {
    return "roof";
  }

  @Override
  public Phase phase() {
    return Phase.ROOF;
  }

  @Override
  public String summary() {
    return "gives horizontal bores a peaked roof, flat-topped where a full peak leaves too little";
  }

  @Override
  public List<String> settings() {
    return List.of("slope", "smallest-bore", "largest-bore", "least-roof", "longest-bridge");
  }

  @Override
  public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
    if (!(feature instanceof Bore bore)) {
      return Optional.empty();
    }
    Optional<Reason> unfit = unfit(bore, limits);
    if (unfit.isPresent()) {
      return Optional.of(new LeftAlone(unfit.get()));
    }
    return Optional.of(new RoofLadder(bore, around, limits).proposal());
  }

  private static Optional<Reason> unfit(Bore bore, Limits limits) {
    double diameter = 2 * bore.radius();
    if (bore.shape() == BoreShape.PEAKED) {
      return Optional.of(Reason.alreadyPeaked());
    }
    if (bore.shape() == BoreShape.POLYGON) {
      return Optional.of(Reason.polygon(bore.facetsPerTurn()));
    }
    if (bore.shape() == BoreShape.THREAD) {
      return Optional.of(Reason.thread());
    }
    if (bore.shape() != BoreShape.ROUND) {
      return Optional.of(Reason.notRound(Math.toDegrees(bore.coveredAngle())));
    }
    if (bore.tilt() >= limits.slope() - TILT_SLACK) {
      return Optional.of(
          Reason.steepEnough(Math.toDegrees(bore.tilt()), Math.toDegrees(limits.slope())));
    }
    // nominal sizes are drawn as decimals: a bore drawn as large as the bound must not fall to
    // rounding, so the bound has the slack of the finest grid in use
    if (diameter < limits.smallestBore() - SIZE_SLACK) {
      return Optional.of(Reason.belowSmallest(diameter, limits.smallestBore()));
    }
    if (diameter > limits.largestBore() + SIZE_SLACK) {
      return Optional.of(Reason.aboveLargest(diameter, limits.largestBore()));
    }
    return Optional.empty();
  }

  /** 0.02 degrees, the error with which an axis may be measured. */
  private static final double TILT_SLACK = Math.toRadians(0.02);

  /** Millimetres; diameters are measured to two micrometres. */
  private static final double SIZE_SLACK = 0.002;

  /** The roofs for one bore, best first. */
  private static final class RoofLadder {

    /** Widening beyond an irregular wall, in millimetres: above the merging of points, 1e-4. */
    private static final double HAIR = 0.004;

    /** Slack beyond the straying of vertices, in millimetres: the output grid and rounding. */
    private static final double GRID = 2e-6;

    /** Straying below this, in millimetres, is that of coordinates with five decimals or more. */
    private static final double EXACT = 1e-5;

    /** A flat top stays at least this far above the crown, in millimetres, to be a real cut. */
    private static final double ABOVE_CROWN = 0.002;

    /**
     * Window below the tangent point in which the base of a widened tool is laid, per radius, where
     * the flank rises by 45 degrees. A flank that goes on by D below the point where it touches
     * stands off the circle by D² / (2 r sin² α): at 45 degrees by 0.0016 r, and for flatter
     * flanks, over bores that lean, the window is the smaller.
     */
    private static final double BASE_WINDOW = 0.04;

    private final Bore bore;
    private final Surroundings around;
    private final Limits limits;
    private final SectionFrame frame;
    private final double angle;
    private final List<Variant> ladder = new ArrayList<>();
    private Reason otherwise = Reason.notProved("no roof fits");

    RoofLadder(Bore bore, Surroundings around, Limits limits) {
      this.bore = bore;
      this.around = around;
      this.limits = limits;
      this.frame = SectionFrame.of(bore);
      this.angle = Math.acos(Math.cos(limits.slope()) / Math.cos(bore.tilt()));
    }

    Proposal proposal() {
      if (bore.section().clean()) {
        double stray = 1.05 * bore.section().deviation() + GRID;
        addRungs(overRulings(stray), new RoofPlan.OnRulings(stray));
      }
      return ladder.isEmpty() ? widened() : new Reshape(ladder, this::widened);
    }

    /** Roofs a hair wider than the wall, which are seldom needed where the wall is clean. */
    private Proposal widened() {
      ladder.clear();
      RoofProfile widened = overPoints();
      addRungs(widened, new RoofPlan.Widened(baseHeight(widened)));
      return ladder.isEmpty() ? new LeftAlone(otherwise) : new Reshape(ladder, otherwise);
    }

    private RoofProfile overRulings(double tie) {
      List<RoofProfile.Point> outline =
          bore.section().rulings().stream()
              .map(ruling -> new RoofProfile.Point(ruling.u(), ruling.v()))
              .toList();
      return RoofProfile.over(outline, angle + footSlack(), tie);
    }

    /**
     * How much steeper the flanks are laid because their feet stand on vertices that stray: a flank
     * is about r sin α wide, so a foot that is off by δ tilts it by δ / (r sin α); both its edges
     * may be off. Walls that are exact to the output grid get exact flanks.
     */
    private double footSlack() {
      double stray = bore.section().deviation();
      return stray <= EXACT ? 0 : 2 * stray / (bore.radius() * Math.sin(angle));
    }

    private RoofProfile overPoints() {
      double[] uvw = bore.section().pointsUvw();
      List<RoofProfile.Point> outline = new ArrayList<>();
      for (int k = 0; k < uvw.length; k += 3) {
        outline.add(new RoofProfile.Point(uvw[k], uvw[k + 1]));
      }
      return RoofProfile.over(outline, angle, 0).moved(HAIR);
    }

    /** Middle of the widest gap between heights of wall vertices just below the tangent point. */
    private double baseHeight(RoofProfile profile) {
      double high = Math.min(profile.left().v(), profile.right().v()) - HAIR;
      double flatter = Math.min(1, Math.sin(angle) / Math.sin(Math.PI / 4));
      double low = high - BASE_WINDOW * bore.radius() * flatter;
      double[] uvw = bore.section().pointsUvw();
      List<Double> heights = new ArrayList<>(List.of(low, high));
      for (int k = 1; k < uvw.length; k += 3) {
        if (uvw[k] > low && uvw[k] < high) {
          heights.add(uvw[k]);
        }
      }
      heights.sort(Double::compare);
      double best = high;
      double widest = 0;
      for (int k = 1; k < heights.size(); k++) {
        double gap = heights.get(k) - heights.get(k - 1);
        if (gap > widest) {
          widest = gap;
          best = heights.get(k) - gap / 2;
        }
      }
      return best;
    }

    private void addRungs(RoofProfile profile, RoofPlan.Footing footing) {
      RoofPlan full = plan(profile, footing);
      if (full.plugged(around, bore)) {
        otherwise = Reason.plugged();
        return;
      }
      double left = full.roofLeft(around);
      if (left >= limits.leastRoof() - GRID) {
        addVariant("peaked", full, left);
      } else {
        addFlatTopped(full, left);
      }
    }

    private void addFlatTopped(RoofPlan full, double fullLeft) {
      RoofProfile profile = full.profile();
      double widest = profile.widestBridge(RoofPlan.crown(bore) + ABOVE_CROWN);
      double high = Math.min(widest, limits.longestBridge());
      if (!(high > 0) || leftWith(full, high) < limits.leastRoof() - GRID) {
        double left = widest > 0 ? leftWith(full, widest) : fullLeft;
        otherwise =
            left < limits.leastRoof() - GRID
                ? Reason.thinRoof(left, limits.leastRoof())
                : Reason.longBridge(
                    needed(full, 0, widest), limits.longestBridge(), fullLeft, limits.leastRoof());
        return;
      }
      double bridge = needed(full, 0, high);
      RoofPlan flat = plan(profile.withBridge(bridge), full.footing());
      addVariant("flat-topped", flat, flat.roofLeft(around));
    }

    /** Narrowest bridge between two widths, of which the second leaves enough; by halving. */
    private double needed(RoofPlan full, double low, double high) {
      double tooNarrow = low;
      double enough = high;
      while (enough - tooNarrow > 1e-4) {
        double middle = (tooNarrow + enough) / 2;
        if (leftWith(full, middle) >= limits.leastRoof()) {
          enough = middle;
        } else {
          tooNarrow = middle;
        }
      }
      return enough;
    }

    private double leftWith(RoofPlan full, double bridge) {
      return new RoofPlan(
              frame, full.profile().withBridge(bridge), full.low(), full.high(), full.footing())
          .roofLeft(around);
    }

    private RoofPlan plan(RoofProfile profile, RoofPlan.Footing footing) {
      return new RoofPlan(
          frame, profile, end(profile, -1, footing), end(profile, 1, footing), footing);
    }

    private RoofEnd end(RoofProfile profile, int side, RoofPlan.Footing footing) {
      Rim rim = side < 0 ? bore.low() : bore.high();
      boolean closed = rim.kind() == EndKind.NARROWING || rim.kind() == EndKind.THREADED;
      if (rim.kind().isBlind() || closed) {
        return capped(side, footing);
      }
      if (ScrewSeat.at(bore, side).isPresent()) {
        // the head of a screw bears on the cone, so the roof ends where the cone begins
        return footing instanceof RoofPlan.OnRulings
            ? RoofEnd.capped(bore, frame, side, GRID)
            : RoofEnd.within(bore, frame, side, HAIR);
      }
      return RoofEnd.open(bore, profile, side, around, limits)
          .orElseGet(
              () ->
                  rim.plane().isPresent()
                      ? capped(side, footing)
                      : RoofEnd.pastRim(bore, frame, side, HAIR));
    }

    private RoofEnd capped(int side, RoofPlan.Footing footing) {
      return footing instanceof RoofPlan.OnRulings
          ? RoofEnd.capped(bore, frame, side, GRID)
          : RoofEnd.beyond(bore, frame, side, HAIR);
    }

    private void addVariant(String name, RoofPlan plan, double left) {
      RoofProfile profile = plan.profile();
      double crown = RoofPlan.crown(bore);
      List<Measure> measures = new ArrayList<>();
      measures.add(Measure.angle("slope", limits.slope()));
      measures.add(Measure.angle("angle-in-section", profile.angle()));
      measures.add(Measure.length("ridge-height", profile.top()));
      measures.add(Measure.length("rise", profile.top() - crown));
      measures.add(Measure.length("roof-left", left));
      if (profile.bridge() > 0) {
        measures.add(Measure.length("bridge", profile.bridge()));
      }
      Cut cut = new Cut(Operation.SUBTRACT, plan.tool(bore.radius()));
      ladder.add(new Variant(name, List.of(cut), measures));
    }
  }
}
