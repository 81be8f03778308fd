package gable.reshaper;

import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/** What tools along an outline need of it. */
final class Outlines {

  /** Corners nearer than this to the chord of their neighbours, in millimetres, are on a side. */
  private static final double STRAIGHT = 1e-5;

  private Outlines() {}

  /** A closed outline without the corners at which it does not turn. */
  static List<Vec3> withoutStraight(List<Vec3> outline) {
    List<Vec3> kept = new ArrayList<>(outline);
    int k = 0;
    while (k < kept.size() && kept.size() > 3) {
      Vec3 before = kept.get((k + kept.size() - 1) % kept.size());
      Vec3 chord = kept.get((k + 1) % kept.size()).minus(before);
      double off = kept.get(k).minus(before).cross(chord).norm() / chord.norm();
      if (off <= STRAIGHT) {
        kept.remove(k);
        k = Math.max(0, k - 1);
      } else {
        k++;
      }
    }
    return kept;
  }
}
