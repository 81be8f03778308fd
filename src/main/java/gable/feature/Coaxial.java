package gable.feature;

import gable.geom.Axis;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Relates bores on one axis: ends at which one opens into a larger or a smaller one, and pieces of
 * the same radius that face each other with open ends (two lugs, a wall that another hole has cut
 * in two), which share a group.
 *
 * <p>Bores are sorted by the distance of their axes from the origin, so that only near neighbours
 * in that order are compared.
 */
final class Coaxial {

  /** Axes that deviate by less than this share of the radius are one axis: practice. */
  private static final double SAME_SHARE = 0.004;

  /** And by less than this, in millimetres, whatever the radius: twice what noise may do. */
  private static final double SAME_LEAST = 0.01;

  /** Directions that differ by less than this sine are one direction: 0.2 degrees. */
  private static final double SAME_DIRECTION = 0.0035;

  private final List<Bore.Builder> bores;
  private int groups;

  private Coaxial(List<Bore.Builder> bores) {
    this.bores = bores;
  }

  /** Relates the bores, which are in their final order. */
  static void relate(List<Bore.Builder> bores) {
    new Coaxial(bores).relateAll();
  }

  /** A bore, its place in the list, and how far its axis passes the origin. */
  private record Entry(int place, Bore.Builder bore, double distance) {}

  private void relateAll() {
    List<Entry> entries = new ArrayList<>();
    for (int k = 0; k < bores.size(); k++) {
      Axis axis = axis(bores.get(k));
      double distance = axis.origin().cross(axis.direction()).norm();
      entries.add(new Entry(k, bores.get(k), distance));
    }
    entries.sort(Comparator.comparingDouble(Entry::distance));
    List<int[]> pairs = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      Entry one = entries.get(i);
      // the direction may differ, which moves the passing distance with the lever to the origin
      double lever = axis(one.bore).origin().norm() * SAME_DIRECTION;
      double reach = lever + slack(one.bore, one.bore) + SAME_SHARE * one.bore.cylinder.radius();
      for (int j = i + 1;
          j < entries.size() && entries.get(j).distance - one.distance <= reach;
          j++) {
        int first = Math.min(one.place, entries.get(j).place);
        int second = Math.max(one.place, entries.get(j).place);
        if (areCoaxial(bores.get(first), bores.get(second))) {
          pairs.add(new int[] {first, second});
        }
      }
    }
    pairs.sort(Comparator.comparingInt((int[] p) -> p[0]).thenComparingInt(p -> p[1]));
    for (int[] pair : pairs) {
      relate(bores.get(pair[0]), bores.get(pair[1]));
    }
  }

  private static Axis axis(Bore.Builder bore) {
    return new Axis(bore.cylinder.origin(), bore.cylinder.w());
  }

  private static double slack(Bore.Builder a, Bore.Builder b) {
    double radius = Math.min(a.cylinder.radius(), b.cylinder.radius());
    return Math.max(SAME_LEAST, SAME_SHARE * radius) + a.residual + b.residual;
  }

  private static boolean areCoaxial(Bore.Builder a, Bore.Builder b) {
    Axis one = axis(a);
    Axis other = axis(b);
    if (one.direction().cross(other.direction()).norm() > SAME_DIRECTION) {
      return false;
    }
    double slack = slack(a, b);
    return one.distance(other.origin()) <= slack && other.distance(one.origin()) <= slack;
  }

  private void relate(Bore.Builder a, Bore.Builder b) {
    if (a.shape == BoreShape.THREAD || b.shape == BoreShape.THREAD) {
      return; // neither a piece of a bore nor one that gets a roof before the bore in it
    }
    double difference = Math.abs(a.cylinder.radius() - b.cylinder.radius());
    boolean along = a.cylinder.w().dot(b.cylinder.w()) > 0;
    double offset = b.cylinder.origin().minus(a.cylinder.origin()).dot(a.cylinder.w());
    if (difference <= slack(a, b)) {
      group(a, b, offset > 0, along);
    } else if (a.cylinder.radius() < b.cylinder.radius()) {
      step(a, b, offset > 0, along);
    } else {
      boolean after = b.cylinder.w().dot(a.cylinder.origin().minus(b.cylinder.origin())) > 0;
      step(b, a, after, along);
    }
  }

  /** Pieces of one bore: the ends that face each other must be open. */
  private void group(Bore.Builder a, Bore.Builder b, boolean after, boolean along) {
    Rim from = after ? a.high : a.low;
    Rim to = after == along ? b.low : b.high;
    if (from.kind().isBlind() || to.kind().isBlind()) {
      return;
    }
    int group = a.group != 0 ? a.group : b.group != 0 ? b.group : ++groups;
    a.group = group;
    b.group = group;
  }

  /** The small bore may open into the large one, straight or over a cone. */
  private static void step(Bore.Builder small, Bore.Builder large, boolean after, boolean along) {
    Rim opening = after ? small.high : small.low;
    Rim narrowing = after == along ? large.low : large.high;
    double at = along ? narrowing.wMin() : -narrowing.wMin();
    double atOther = along ? narrowing.wMax() : -narrowing.wMax();
    double offset = large.cylinder.origin().minus(small.cylinder.origin()).dot(small.cylinder.w());
    double largeEnd = offset + (at + atOther) / 2;
    double smallEnd = opening.outerW();
    if (Math.abs(largeEnd - smallEnd) > slack(small, large) + rimHeight(opening, narrowing)) {
      return;
    }
    if (!opening.kind().isBlind()) {
      if (after) {
        small.high = opening.as(EndKind.STEP);
      } else {
        small.low = opening.as(EndKind.STEP);
      }
    }
    if (narrowing.kind().isBlind()) {
      if (after == along) {
        large.low = narrowing.as(EndKind.NARROWING);
      } else {
        large.high = narrowing.as(EndKind.NARROWING);
      }
    }
  }

  private static double rimHeight(Rim one, Rim other) {
    return one.wMax() - one.wMin() + other.wMax() - other.wMin();
  }
}
