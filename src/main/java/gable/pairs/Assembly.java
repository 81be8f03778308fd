package gable.pairs;

import gable.geom.Affine3;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A rigid motion that brings part A onto part B, with all pins and bores that it joins. It is no
 * reflection: directions go onto directions, and the planes square to them are turned.
 *
 * @param mates what comes together, at least two
 * @param motion from print space of A to print space of B, the faces closed
 */
record Assembly(List<Mate> mates, Affine3 motion) {

  Assembly {
    mates = List.copyOf(mates);
  }

  /**
   * The motion that fits the mates best, if their lines come together within the play.
   *
   * @param mates at least two with one direction each in A and in B, not all on one line
   */
  static Optional<Assembly> of(List<Mate> mates) {
    Flat a = new Flat(mates.get(0).directionOfA());
    Flat b = new Flat(mates.get(0).directionOfB());
    List<double[]> from = new ArrayList<>();
    List<double[]> to = new ArrayList<>();
    for (Mate mate : mates) {
      from.add(a.of(mate.pointOfA()));
      to.add(b.of(mate.pointOfB()));
    }
    Turn turn = Turn.fitting(from, to);
    double stop = Double.POSITIVE_INFINITY;
    double faces = Double.POSITIVE_INFINITY;
    for (int k = 0; k < mates.size(); k++) {
      Mate mate = mates.get(k);
      if (turn.distance(from.get(k), to.get(k)) > Fit.play(mate.pin(), mate.way().bore())) {
        return Optional.empty();
      }
      double closed = to.get(k)[2] - from.get(k)[2];
      faces = Math.min(faces, closed);
      stop = Math.min(stop, Math.min(closed, closed + mate.spare()));
    }
    if (faces - stop > Mate.seat()) {
      return Optional.empty(); // a pin is longer than its bore is deep
    }
    for (int k = 0; k < mates.size(); k++) {
      if (!mates.get(k).isEngaged(to.get(k)[2] - from.get(k)[2] - stop)) {
        return Optional.empty();
      }
    }
    return Optional.of(new Assembly(mates, turn.motion(a, b, stop)));
  }

  /** Direction in B of a direction in A, and the other way round. */
  Vec3 toBore(Mate mate, Vec3 ofPin) {
    return (mate.pinOnA() ? motion : motion.inverse()).applyVector(ofPin).unit();
  }
}
