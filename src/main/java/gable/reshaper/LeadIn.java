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
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Eases the mouths of a bore: a chamfer of 45 degrees, 0.4 mm deep by default, all around the
 * profile that the bore has, roof included, so that a pin finds its way in (common practice, no
 * source). Sharp mouths only, in flat faces or in curved ones that open to the outside; a mouth
 * that is eased already is left.
 */
public final class LeadIn implements Reshaper {

  /** For the service loader. */
  public LeadIn() {}

  @Override
  public String name() {
    return "lead-in";
  }

  @Override
  public Phase phase() {
    return Phase.LEAD_IN;
  }

  @Override
  public boolean onByItself() {
    return false;
  }

  @Override
  public boolean onForJoints() {
    return true;
  }

  @Override
  public String summary() {
    return "chamfers the sharp mouths of bores at 45 degrees: of bores whose pin is known, of all with"
        + " --with lead-in";
  }

  @Override
  public List<String> settings() {
    return List.of("lead-in", "least-roof", "slope");
  }

  @Override
  public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
    if (!(feature instanceof Bore bore)) {
      return Optional.empty();
    }
    if (bore.shape() != BoreShape.ROUND && bore.shape() != BoreShape.PEAKED) {
      return Optional.of(
          new LeftAlone(new Reason("mouth-not-round", "only round and roofed mouths are eased")));
    }
    Ladder ladder = new Ladder(limits.joint().leadIn());
    for (int side : new int[] {-1, 1}) {
      ladder.add(bore, side, around, limits);
    }
    List<Variant> variants = ladder.variants();
    Optional<ScrewSeat> seat = ScrewSeat.of(bore);
    if (variants.isEmpty() && seat.isPresent()) {
      return Optional.of(new LeftAlone(Reason.screwSeat(seat.get().screw())));
    }
    return Optional.of(
        variants.isEmpty()
            ? new LeftAlone(new Reason("no-mouth", ladder.why))
            : new Reshape(variants, Reason.notProved("no mouth can be eased")));
  }

  /** The ways of easing the mouths of one bore. */
  private static final class Ladder {

    /**
     * Legs that are tried, as factors: where planes meet the edges of the face too near to its
     * corners, a hair deeper they do not; half a percent is what planes are staggered by anyway.
     */
    private static final double[] DEEPER = {1, 1.005, 1.0025};

    /** How much deeper every other plane of a curved mouth starts with each, in millimetres. */
    private static final double[] STAGGER = {0.002, 0.0031, 0.0013};

    /** Legs that differ by less than this, in millimetres, are told as one. */
    private static final double SAME = 1e-4;

    private final double leg;
    private final List<List<Cut>> mouths = new ArrayList<>();
    private double least;
    private double most;
    private String why = "no mouth is sharp";

    Ladder(double leg) {
      this.leg = leg;
      this.least = leg;
      this.most = leg;
    }

    void add(Bore bore, int side, Surroundings around, Limits limits) {
      Rim rim = side < 0 ? bore.low() : bore.high();
      List<Cut> cuts = new ArrayList<>();
      for (int k = 0; k < DEEPER.length; k++) {
        if (rim.kind() == EndKind.OPEN_SQUARE || rim.kind() == EndKind.OPEN_SLANTED) {
          MouthTool.Answer answer =
              new MouthTool(bore, rim, side, DEEPER[k] * leg).answer(around, limits);
          answer.tool().ifPresent(tool -> cuts.add(new Cut(Operation.SUBTRACT, tool)));
          why = answer.tool().isPresent() ? why : answer.why();
        } else if (rim.kind() == EndKind.OPEN_CURVED) {
          CurvedMouth.Answer answer =
              new CurvedMouth(bore, rim, side, DEEPER[k] * leg, STAGGER[k]).answer(around, limits);
          answer.tool().ifPresent(tool -> cuts.add(new Cut(Operation.SUBTRACT, tool)));
          why = answer.tool().isPresent() ? why : answer.why();
          least = answer.tool().isPresent() ? Math.min(least, answer.least()) : least;
          most = answer.tool().isPresent() ? Math.max(most, answer.most()) : most;
        }
      }
      if (!cuts.isEmpty()) {
        mouths.add(cuts);
      }
    }

    /** Both mouths in every way, or one of them. */
    List<Variant> variants() {
      List<Variant> variants = new ArrayList<>();
      if (mouths.size() == 2) {
        for (Cut low : mouths.get(0)) {
          for (Cut high : mouths.get(1)) {
            variants.add(new Variant("two mouths", List.of(low, high), measures()));
          }
        }
      }
      for (List<Cut> ways : mouths) {
        for (Cut way : ways) {
          variants.add(new Variant("one mouth", List.of(way), measures()));
        }
      }
      return variants;
    }

    private List<Measure> measures() {
      List<Measure> measures = new ArrayList<>();
      measures.add(Measure.length("leg", leg));
      measures.add(Measure.angle("chamfer", Math.PI / 4));
      if (least < leg - SAME || most > 1.01 * leg) {
        measures.add(Measure.length("least-leg", least));
        measures.add(Measure.length("most-leg", most));
      }
      return measures;
    }
  }
}
