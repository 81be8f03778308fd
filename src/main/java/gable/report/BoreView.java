package gable.report;

import gable.feature.Bore;
import gable.feature.EndKind;
import gable.feature.Feature;
import gable.feature.Rim;
import gable.geom.Affine3;
import gable.geom.Vec3;

/**
 * A bore as it lies at one place of its object.
 *
 * @param bore the bore where it was measured
 * @param toPlace takes it to the place that is shown
 */
record BoreView(Bore bore, Affine3 toPlace) {

  static BoreView of(Feature feature, Affine3 toPlace) {
    if (feature instanceof Bore bore) {
      return new BoreView(bore, toPlace);
    }
    throw new IllegalStateException("no view of a " + feature.getClass().getSimpleName());
  }

  /** Point of the axis midway between the ends. */
  Vec3 middle() {
    return toPlace.apply(bore.axis().origin());
  }

  /** Unit direction of the axis, from start to end. */
  Vec3 direction() {
    return toPlace.applyVector(bore.axis().direction()).unit();
  }

  /** Point of the axis at one end. */
  Vec3 at(Rim rim) {
    double along = (rim.wMin() + rim.wMax()) / 2;
    return toPlace.apply(bore.axis().origin().plus(bore.axis().direction().times(along)));
  }

  double diameter() {
    return 2 * bore.radius();
  }

  /** What it is, in a few words: shape, kind of hole, length. */
  String words() {
    return String.join(
        ", ", shape() + " " + Figures.length(diameter()), hole(), Figures.length(bore.length()));
  }

  private String shape() {
    return switch (bore.shape()) {
      case ROUND -> "bore";
      case PEAKED -> "roofed bore";
      case POLYGON -> "polygon";
      case PARTIAL -> "part-round bore";
      case THREAD -> "thread";
    };
  }

  private String hole() {
    EndKind low = bore.low().kind();
    EndKind high = bore.high().kind();
    if (low.isBlind() && high.isBlind()) {
      return "closed";
    }
    return low.isBlind() || high.isBlind() ? "blind" : "through";
  }
}
