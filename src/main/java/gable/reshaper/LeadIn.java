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
 * source). Sharp flat mouths only; a mouth that is eased already, or curved, is left.
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
    return "chamfers the flat mouths of bores at 45 degrees: of bores whose pin is known, of all with"
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
          new LeftAlone(new Reason("not-round", "only round and roofed mouths are eased")));
    }
    double leg = limits.joint().leadIn();
    List<Cut> cuts = new ArrayList<>();
    String why = "no mouth is flat and sharp";
    for (int side : new int[] {-1, 1}) {
      Rim rim = side < 0 ? bore.low() : bore.high();
      if (rim.kind() == EndKind.OPEN_SQUARE || rim.kind() == EndKind.OPEN_SLANTED) {
        MouthTool.Answer answer = new MouthTool(bore, rim, side, leg).answer(around, limits);
        answer.tool().ifPresent(tool -> cuts.add(new Cut(Operation.SUBTRACT, tool)));
        why = answer.tool().isPresent() ? why : answer.why();
      }
    }
    Optional<ScrewSeat> seat = ScrewSeat.of(bore);
    if (cuts.isEmpty() && seat.isPresent()) {
      return Optional.of(new LeftAlone(Reason.screwSeat(seat.get().screw())));
    }
    if (cuts.isEmpty()) {
      return Optional.of(new LeftAlone(new Reason("no-mouth", why)));
    }
    return Optional.of(new Reshape(ladder(cuts, leg), Reason.notProved("no mouth can be eased")));
  }

  /** Both mouths, or one of them. */
  private static List<Variant> ladder(List<Cut> cuts, double leg) {
    List<Measure> measures =
        List.of(Measure.length("leg", leg), Measure.angle("chamfer", Math.PI / 4));
    List<Variant> ladder = new ArrayList<>();
    ladder.add(new Variant(cuts.size() == 1 ? "one mouth" : "two mouths", cuts, measures));
    for (int k = 0; k < cuts.size() && cuts.size() > 1; k++) {
      ladder.add(new Variant("one mouth", List.of(cuts.get(k)), measures));
    }
    return ladder;
  }
}
