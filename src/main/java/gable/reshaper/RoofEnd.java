package gable.reshaper;

import gable.feature.Bore;
import gable.feature.Rim;
import gable.feature.Surroundings;
import gable.feature.Surroundings.Passage;
import gable.geom.Vec3;
import gable.plan.Limits;
import gable.plan.ToolPlane;
import gable.section.RoofProfile;
import java.util.List;
import java.util.Optional;

/**
 * Where a roof ends along the axis, at one end of a bore.
 *
 * @param plane the end plane of the tool
 * @param reach where along the axis it is
 * @param measured how far from there the roof is measured: nearer to a mouth that leans inwards the
 *     material above tapers to nothing, before and after
 */
record RoofEnd(ToolPlane plane, double reach, double measured) {

  /** How far past the surface of a mouth the tool reaches at most (practice: any, it is air). */
  private static final double PAST_MOUTH = 1.0;

  /**
   * A ridge that leaves farther from the rim than this share of the radius has missed the mouth: a
   * mouth slanted by 60 degrees needs (√2 − 1) tan 60° = 0.72 radii, one in a pipe of the bore's
   * own width somewhat more.
   */
  private static final double FARTHEST_EXIT = 1.5;

  /**
   * The lip over a leaning mouth that is not measured, as a multiple of the length in which a
   * straight lip grows to the least roof; 2 allows for a convex mouth (a pipe), whose lip grows
   * more slowly (estimate).
   */
  private static final double LIP = 2;

  /** Heights on a flank at which is asked how far the mouth reaches, contact 0 to ridge 1. */
  private static final double[] PROBES = {0.02, 0.25, 0.5, 0.75, 0.98};

  /** An end with a bottom, or a cap planned for want of a mouth: at the rim itself. */
  static RoofEnd capped(Bore bore, SectionFrame frame, int side, double slack) {
    Rim rim = side < 0 ? bore.low() : bore.high();
    double at = rim.crownW();
    ToolPlane plane =
        rim.plane()
            .map(
                flat ->
                    new ToolPlane(flat, 1.05 * rim.planeDeviation() + slack, ToolPlane.Role.END))
            .orElseGet(() -> new ToolPlane(frame.square(at, side), 0, ToolPlane.Role.END));
    return new RoofEnd(plane, at, at);
  }

  /** A capped end a hair beyond the rim, for a tool that is to meet no vertex of it. */
  static RoofEnd beyond(Bore bore, SectionFrame frame, int side, double hair) {
    RoofEnd at = capped(bore, frame, side, 0);
    double out = hair + at.plane.snap();
    ToolPlane plane = new ToolPlane(at.plane.plane().moved(out), 0, ToolPlane.Role.END);
    return new RoofEnd(plane, at.reach + side * out, at.measured);
  }

  /** A capped end a hair inside the rim, for a tool that is to leave the rim as it is. */
  static RoofEnd within(Bore bore, SectionFrame frame, int side, double hair) {
    RoofEnd at = capped(bore, frame, side, 0);
    double in = hair + at.plane.snap();
    ToolPlane plane = new ToolPlane(at.plane.plane().moved(-in), 0, ToolPlane.Role.END);
    return new RoofEnd(plane, at.reach - side * in, at.measured);
  }

  /**
   * An end for a curved opening that the ridge misses, as where a bore of the same width crosses: a
   * hair beyond the outermost point of the rim, so that no part of the crown is left.
   */
  static RoofEnd pastRim(Bore bore, SectionFrame frame, int side, double hair) {
    Rim rim = side < 0 ? bore.low() : bore.high();
    double at = (side < 0 ? rim.wMin() : rim.wMax()) + side * hair;
    return new RoofEnd(new ToolPlane(frame.square(at, side), 0, ToolPlane.Role.END), at, at);
  }

  /** An open end: past the mouth's surface over the whole roof; nothing if the ridge misses it. */
  static Optional<RoofEnd> open(
      Bore bore, RoofProfile profile, int side, Surroundings around, Limits limits) {
    SectionFrame frame = SectionFrame.of(bore);
    Rim rim = side < 0 ? bore.low() : bore.high();
    double inner = side < 0 ? -rim.wMax() : rim.wMin();
    double outer = side < 0 ? -rim.wMin() : rim.wMax();
    double outermost = Math.max(outer, side * rim.outerW());
    double middle = side * (bore.low().crownW() + bore.high().crownW()) / 2;
    double from = Math.max(inner - bore.radius(), middle);
    double farthest = outermost + FARTHEST_EXIT * bore.radius();
    double reach = outer;
    double margin = PAST_MOUTH;
    double measured = Double.NaN;
    List<RoofProfile.Point> corners = profile.corners();
    for (int k = 0; k + 1 < corners.size(); k++) {
      for (double share : PROBES) {
        RoofProfile.Point p = between(corners.get(k), corners.get(k + 1), share);
        Probe probe = probe(frame, p, side, from, around);
        if (probe.exit > farthest) {
          return Optional.empty();
        }
        reach = Math.max(reach, probe.exit);
        margin = Math.min(margin, probe.gap / 2);
        double lip = probe.exit - LIP * limits.leastRoof() * probe.taper;
        measured = Double.isNaN(measured) ? lip : Math.min(measured, lip);
      }
    }
    double end = side * (reach + margin);
    ToolPlane plane = new ToolPlane(frame.square(end, side), 0, ToolPlane.Role.END);
    return Optional.of(new RoofEnd(plane, end, side * measured));
  }

  private static RoofProfile.Point between(RoofProfile.Point a, RoofProfile.Point b, double share) {
    return new RoofProfile.Point(a.u() + (b.u() - a.u()) * share, a.v() + (b.v() - a.v()) * share);
  }

  /**
   * One line along the roof.
   *
   * @param exit where it leaves the solid, measured outwards
   * @param gap how much air is beyond
   * @param taper length of lip for each unit of its height
   */
  private record Probe(double exit, double gap, double taper) {}

  private static Probe probe(
      SectionFrame frame, RoofProfile.Point p, int side, double from, Surroundings around) {
    Vec3 outward = frame.w().times(side);
    Vec3 start = frame.point(p.u(), p.v(), side * from);
    List<Passage> passages = around.passages(start, outward, around.size());
    if (passages.isEmpty() || !passages.get(0).leaves()) {
      double gap = passages.isEmpty() ? PAST_MOUTH * 2 : passages.get(0).at();
      return new Probe(from, Math.max(gap, 1e-3), 0);
    }
    Passage exit = passages.get(0);
    double gap = passages.size() > 1 ? passages.get(1).at() - exit.at() : PAST_MOUTH * 2;
    double lean = exit.normal().z();
    double taper = lean > 1e-9 ? lean / Math.max(1e-3, exit.normal().dot(outward)) : 0;
    return new Probe(from + exit.at(), Math.max(gap, 1e-3), taper);
  }
}
