package gable.reshaper;

import gable.feature.Bore;
import gable.feature.Surroundings;
import gable.geom.Vec3;
import gable.plan.ConvexTool;
import gable.plan.ToolPlane;
import gable.plan.ToolPlane.Role;
import gable.section.RoofProfile;
import java.util.ArrayList;
import java.util.List;

/**
 * A roof over one bore, complete: its section, where it ends, and the tool that cuts it.
 *
 * @param frame section frame of the bore
 * @param profile section of the roof
 * @param low end at smaller w
 * @param high end at larger w
 * @param footing how the tool stands on the wall
 */
record RoofPlan(
    SectionFrame frame, RoofProfile profile, RoofEnd low, RoofEnd high, Footing footing) {

  /** How the tool stands on the wall of the bore. */
  sealed interface Footing permits OnRulings, Widened {}

  /**
   * On two rulings of a clean wall, whose vertices lie in the planes that meet there.
   *
   * @param snap how far vertices of the rulings stray, in millimetres
   */
  record OnRulings(double snap) implements Footing {}

  /**
   * Widened a hair beyond an irregular wall, which the base then crosses at a real angle. The ledge
   * that this leaves faces up.
   *
   * @param base height of the base plane in the section
   */
  record Widened(double base) implements Footing {}

  /**
   * How far below the chord between the contacts the base dips, as a share of the chord: it lies in
   * the void, and a facet between two neighbouring contacts is above it.
   */
  private static final double DIP = 0.1;

  /** Millimetres by which the measured stretch stays off the mouth's own faces. */
  private static final double INSET = 1e-6;

  ConvexTool tool(double radius) {
    List<ToolPlane> planes = new ArrayList<>();
    double snap = footing instanceof OnRulings rulings ? rulings.snap : 0;
    double sine = Math.sin(profile.angle());
    double cosine = Math.cos(profile.angle());
    RoofProfile.Point left = profile.left();
    RoofProfile.Point right = profile.right();
    planes.add(new ToolPlane(frame.plane(left.u(), left.v(), -sine, cosine), snap, Role.FLANK));
    planes.add(new ToolPlane(frame.plane(right.u(), right.v(), sine, cosine), snap, Role.FLANK));
    if (profile.bridge() > 0) {
      planes.add(new ToolPlane(frame.plane(0, profile.top(), 0, 1), 0, Role.BRIDGE));
    }
    planes.add(low.plane());
    planes.add(high.plane());
    addBase(planes, snap);
    double middle = (low.reach() + high.reach()) / 2;
    Vec3 near = frame.point(profile.ridge().u(), (left.v() + right.v()) / 2, middle);
    double length = Math.abs(high.reach() - low.reach());
    return ConvexTool.of(planes, near, 2 * length + 10 * radius);
  }

  private void addBase(List<ToolPlane> planes, double snap) {
    if (footing instanceof Widened widened) {
      planes.add(new ToolPlane(frame.plane(0, widened.base, 0, -1), 0, Role.BASE));
      return;
    }
    RoofProfile.Point left = profile.left();
    RoofProfile.Point right = profile.right();
    double dip = DIP * (right.u() - left.u());
    double mu = (left.u() + right.u()) / 2;
    double mv = (left.v() + right.v()) / 2 - dip;
    planes.add(
        new ToolPlane(
            frame.plane(left.u(), left.v(), mv - left.v(), -(mu - left.u())), snap, Role.BASE));
    planes.add(
        new ToolPlane(
            frame.plane(right.u(), right.v(), right.v() - mv, -(right.u() - mu)), snap, Role.BASE));
  }

  /** Least height of material above the roof, in millimetres; zero where nothing is above it. */
  double roofLeft(Surroundings around) {
    double from = low.measured() + INSET;
    double to = high.measured() - INSET;
    if (!(from < to)) {
      double middle = (from + to) / 2;
      double inch = 1e-3 * Math.abs(high.reach() - low.reach());
      from = middle - inch;
      to = middle + inch;
    }
    double least = Double.POSITIVE_INFINITY;
    List<RoofProfile.Point> corners = profile.corners();
    for (int k = 0; k + 1 < corners.size(); k++) {
      RoofProfile.Point a = corners.get(k);
      RoofProfile.Point b = corners.get(k + 1);
      List<Vec3> patch =
          List.of(
              frame.point(a.u(), a.v(), from),
              frame.point(b.u(), b.v(), from),
              frame.point(b.u(), b.v(), to),
              frame.point(a.u(), a.v(), to));
      least = Math.min(least, around.heightAbove(patch));
    }
    return Double.isFinite(least) ? least : 0;
  }

  /** True if another body fills part of the room that the roof is to open. */
  boolean plugged(Surroundings around, Bore bore) {
    double crown = crown(bore);
    double height = (crown + profile.top()) / 2;
    double from = low.measured();
    double to = high.measured();
    for (double share : new double[] {0.25, 0.5, 0.75}) {
      Vec3 probe = frame.point(profile.ridge().u(), height, from + (to - from) * share);
      if (around.winding(probe) > 1) {
        return true;
      }
    }
    return false;
  }

  /** Highest point of the wall's section. */
  static double crown(Bore bore) {
    double[] uvw = bore.section().pointsUvw();
    double crown = Double.NEGATIVE_INFINITY;
    for (int k = 1; k < uvw.length; k += 3) {
      crown = Math.max(crown, uvw[k]);
    }
    return crown;
  }
}
