package gable.pairs;

import gable.geom.Affine3;
import gable.geom.Vec3;
import java.util.List;

/** Whether pins would stand in the other part's solid once two parts are joined. */
final class Clash {

  /** Places along a pin that are looked at, from root to tip; near its ends noise decides. */
  private static final double[] ALONG = {0.25, 0.6, 0.95};

  private static final int AROUND = 8;

  private final Assembly joining;

  Clash(Assembly joining) {
    this.joining = joining;
  }

  /**
   * Looks at all pins of one part but those that go into bores.
   *
   * @param onA whether it is A; else B
   */
  boolean isFree(List<PinHalf> pins, Solid other, boolean onA) {
    Affine3 motion = onA ? joining.motion() : joining.motion().inverse();
    return pins.stream()
        .filter(
            pin ->
                joining.mates().stream().noneMatch(m -> m.pinOnA() == onA && m.pin().equals(pin)))
        .allMatch(pin -> isFree(pin, motion, other));
  }

  private static boolean isFree(PinHalf pin, Affine3 motion, Solid other) {
    Vec3 side = pin.axis().direction().anySquare();
    Vec3 across = pin.axis().direction().cross(side);
    for (double share : ALONG) {
      Vec3 centre = pin.axis().at(share * pin.length());
      boolean clear = !other.holds(motion.apply(centre));
      for (int k = 0; k < AROUND && clear; k++) {
        double angle = 2 * Math.PI * k / AROUND;
        Vec3 out = side.times(Math.cos(angle)).plus(across.times(Math.sin(angle)));
        clear = !other.holds(motion.apply(centre.along(out, 0.9 * pin.radius())));
      }
      if (!clear) {
        return false;
      }
    }
    return true;
  }
}
