package gable.reshaper;

import gable.feature.Surroundings;
import gable.geom.Box3;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.section.Passing;
import gable.section.Window;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Sweeps a pin with its webs into a bore: at each depth the widest section of the pin that ever
 * gets there, which is the one that stays there, against the section that the bore has there now
 * together with the slots that are planned.
 */
final class SlotPassage {

  /** Sections that are looked at. */
  private static final int SECTIONS = 16;

  /** Corners of the pin's circle; the polygon lies around it, by 2e-5 of the radius. */
  private static final int CORNERS = 512;

  /** Distance of the first and last section from the ends, in millimetres. */
  private static final double INSET = 0.01;

  private final Surroundings around;
  private final WebFrame frame;
  private final WebShape web;
  private final boolean both;

  SlotPassage(Surroundings around, WebFrame frame, WebShape web, boolean both) {
    this.around = around;
    this.frame = frame;
    this.web = web;
    this.both = both;
  }

  /** Height of a slot at a depth. */
  interface Slot {
    /** How far from the axis its floor is; 0 if there is none. */
    double floor(double x);
  }

  /**
   * Least clearance.
   *
   * @param to depth of the tip, or of the bore where that is less
   * @param half half the width of the slots
   * @param slot the slots
   * @return in millimetres, below zero where the pin does not pass; NaN where no section is closed
   */
  double least(double to, double half, Slot slot) {
    double least = Double.NaN;
    for (int k = 0; k < SECTIONS; k++) {
      double x = INSET + (to - 2 * INSET) * k / (SECTIONS - 1);
      List<double[]> room = room(x);
      if (!room.isEmpty()) {
        add(room, half, slot.floor(x));
        List<double[]> pin = new ArrayList<>(List.of(Passing.around(web.radius(), CORNERS)));
        add(pin, web.half(), x < web.end() ? web.height(x) : 0);
        double clearance = Passing.clearance(pin, room);
        least = Double.isNaN(least) ? clearance : Math.min(least, clearance);
      }
    }
    return least;
  }

  /**
   * Whether the slots are there already, or the bore has room for them anyway.
   *
   * @param slack what may be missing of them
   */
  boolean isThere(double to, double half, Slot slot, double slack) {
    boolean seen = false;
    for (int k = 0; k < SECTIONS; k++) {
      double x = INSET + (to - 2 * INSET) * k / (SECTIONS - 1);
      double height = slot.floor(x) - slack;
      List<double[]> room = room(x);
      if (!room.isEmpty() && height > 0) {
        List<double[]> wanted = new ArrayList<>();
        add(wanted, half - slack, height);
        seen = true;
        if (Passing.clearance(wanted, room) < 0) {
          return false;
        }
      }
    }
    return seen;
  }

  /**
   * How far the bore reaches from its axis as it is.
   *
   * @param x at a depth
   * @param sense 1 towards the web, -1 away from it
   */
  double extent(double x, int sense) {
    double most = web.radius();
    for (double[] ring : room(x)) {
      for (int k = 1; k < ring.length; k += 2) {
        most = Math.max(most, sense * ring[k]);
      }
    }
    return most;
  }

  private void add(List<double[]> rings, double half, double height) {
    if (height > 0) {
      rings.add(Passing.rectangle(-half, both ? -height : 0, half, height));
    }
  }

  /** The outline of the bore at a depth, z and y of its corners; none if it is not closed. */
  private List<double[]> room(double x) {
    Plane plane = frame.plane(x, 0, 1, 0);
    Vec3 centre = frame.point(x, 0, 0);
    double reach = 3 * (web.radius() + Math.max(0, web.height(x)));
    List<double[]> holes = new ArrayList<>();
    for (List<Vec3> loop : around.outlines(plane, Box3.EMPTY.with(centre).grown(reach))) {
      double turned = 0;
      double[] ring = new double[2 * loop.size()];
      for (int k = 0; k < loop.size(); k++) {
        Vec3 a = loop.get(k).minus(centre);
        Vec3 b = loop.get((k + 1) % loop.size()).minus(centre);
        turned += Math.atan2(a.cross(b).dot(frame.along()), a.dot(b));
        ring[2 * k] = a.dot(frame.side());
        ring[2 * k + 1] = a.dot(frame.down());
      }
      if (turned > Math.PI) {
        holes.add(ring);
      }
    }
    holes.sort(Comparator.comparingDouble(ring -> Math.abs(Window.twiceArea(ring))));
    return holes.isEmpty() ? holes : new ArrayList<>(holes.subList(0, 1));
  }
}
