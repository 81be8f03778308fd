package gable.report;

import gable.feature.Bore;
import gable.feature.EndKind;
import gable.feature.Feature;
import gable.feature.Pin;
import gable.feature.Rim;
import gable.feature.ScrewSeat;
import gable.geom.Affine3;
import gable.geom.Vec3;
import java.util.List;

/**
 * A feature as it lies at one place of its object.
 *
 * @param feature the feature where it was measured
 * @param toPlace takes it to the place that is shown
 */
record FeatureView(Feature feature, Affine3 toPlace) {

  static FeatureView of(Feature feature, Affine3 toPlace) {
    return new FeatureView(feature, toPlace);
  }

  /** Point of the axis midway between the ends. */
  Vec3 middle() {
    return toPlace.apply(feature.axis().origin());
  }

  /** Unit direction of the axis, from start to end. */
  Vec3 direction() {
    return toPlace.applyVector(feature.axis().direction()).unit();
  }

  /** Point of the axis at its first end; of a pin at the root. */
  Vec3 start() {
    return at(feature instanceof Bore bore ? middle(bore.low()) : -feature.length() / 2);
  }

  /** Point of the axis at its other end; of a pin at the tip. */
  Vec3 end() {
    return at(feature instanceof Bore bore ? middle(bore.high()) : feature.length() / 2);
  }

  private static double middle(Rim rim) {
    return (rim.wMin() + rim.wMax()) / 2;
  }

  private Vec3 at(double along) {
    return toPlace.apply(feature.axis().at(along));
  }

  double diameter() {
    return 2 * feature.radius();
  }

  /** {@code bore} or {@code pin}. */
  String kind() {
    return feature instanceof Pin ? "pin" : "bore";
  }

  /** What the section looks like, as programs read it. */
  String shape() {
    return feature instanceof Bore bore ? Figures.word(bore.shape()) : "round";
  }

  /** Kinds of the ends at start and end, as programs read them. */
  List<String> ends() {
    if (feature instanceof Pin pin) {
      return List.of(Figures.word(pin.root()), Figures.word(pin.tip()));
    }
    Bore bore = (Bore) feature;
    return List.of(Figures.word(bore.low().kind()), Figures.word(bore.high().kind()));
  }

  /** Number shared by coaxial pieces; 0 if it stands alone. */
  int group() {
    return feature instanceof Bore bore ? bore.group() : 0;
  }

  /** What it is, in a few words: shape, kind of hole or end, length. */
  String words() {
    String size = Figures.length(diameter());
    return feature instanceof Pin pin
        ? String.join(
            ", ",
            "pin " + size,
            (pin.isUpright() ? "upright, " : "horizontal, ") + Figures.word(pin.tip()) + " tip",
            Figures.length(pin.length()))
        : String.join(
            ", ",
            name((Bore) feature) + " " + size,
            hole(),
            Figures.length(feature.length()) + seatWords());
  }

  private String seatWords() {
    String screw = screw();
    return screw.isEmpty() ? "" : ", seat for an " + screw + " countersunk screw";
  }

  /** The screw for which a bore has a seat, such as {@code M3}; empty if it has none. */
  String screw() {
    return feature instanceof Bore bore ? ScrewSeat.of(bore).map(ScrewSeat::screw).orElse("") : "";
  }

  private static String name(Bore bore) {
    return switch (bore.shape()) {
      case ROUND -> "bore";
      case PEAKED -> "roofed bore";
      case POLYGON -> "polygon";
      case PARTIAL -> "part-round bore";
      case THREAD -> "thread";
    };
  }

  private String hole() {
    EndKind low = ((Bore) feature).low().kind();
    EndKind high = ((Bore) feature).high().kind();
    if (low.isBlind() && high.isBlind()) {
      return "closed";
    }
    return low.isBlind() || high.isBlind() ? "blind" : "through";
  }
}
