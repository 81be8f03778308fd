package gable.reshaper;

import gable.feature.Bore;
import gable.feature.Feature;
import gable.feature.Pin;
import gable.feature.Surroundings;
import gable.plan.Limits;
import gable.plan.Proposal;
import gable.plan.Reshaper;
import java.util.List;
import java.util.Optional;

/**
 * Carries horizontal pins in the air by a web that is part of the part, and gives the bore that the
 * pin goes into the slot for it, so that the joint becomes a keyhole. Only for joints of which both
 * halves are known, since a web without a slot would block the joint.
 *
 * <p>The web is as thick as the limits say (common practice: 2 to 3 lines), its underside at the
 * slope limit; the slot is the web with the clearance around it ({@link WebShape}).
 */
public final class Gusset implements Reshaper {

  /** For the service loader. */
  public Gusset() {}

  @Override
  public String name() {
    return "gusset";
  }

  @Override
  public Phase phase() {
    return Phase.SLOT;
  }

  @Override
  public boolean onByItself() {
    return false;
  }

  @Override
  public String summary() {
    return "carries horizontal pins of joints by a web, and slots the bore that each goes into"
        + " (only with --with gusset)";
  }

  @Override
  public List<String> settings() {
    return List.of("gusset", "web-width", "clearance", "slope", "least-roof");
  }

  @Override
  public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
    if (feature instanceof Pin pin) {
      return Optional.of(new WebPlan(pin, around, limits).proposal());
    }
    if (!(feature instanceof Bore bore)) {
      return Optional.empty();
    }
    return around
        .partner(bore)
        .map(partner -> new SlotPlan(bore, partner, around, limits).proposal());
  }
}
