package gable.reshaper;

import gable.feature.Bore;
import gable.feature.EndKind;
import gable.feature.Rim;
import gable.feature.Surroundings;
import gable.feature.Surroundings.Passage;
import gable.geom.Vec3;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Where along the axis of a bore the face is in which it has its mouth, as a pin sees it that comes
 * in: in the middle of a flat one, at the outermost place of a curved one.
 *
 * <p>The end of a wall with a slot runs along the slot and back and tells nothing of a chamfer
 * before it. So where an end looks curved, lines along the axis beside the bore feel the face, ever
 * farther out as long as that rises; of a flat face places opposite each other have one sum.
 */
final class MouthFace {

  /** Directions from the axis, from where the slot is: beside slot and roof, in radians. */
  private static final double[] BESIDE = {Math.toRadians(60), Math.PI / 2, Math.toRadians(120)};

  /** From line to line, in millimetres. */
  private static final double STEP = 0.25;

  private final Bore bore;
  private final Surroundings around;
  private final Vec3 down;
  private final Rim rim;
  private final int side;

  /**
   * A face.
   *
   * @param down from the axis towards the slot
   * @param side -1 for the end at the smaller parameter of the axis, 1 for the other
   */
  MouthFace(Bore bore, Surroundings around, Vec3 down, int side) {
    this.bore = bore;
    this.around = around;
    this.down = WebFrame.of(Vec3.ZERO, bore.axis().direction(), down).down();
    this.rim = side < 0 ? bore.low() : bore.high();
    this.side = side;
  }

  /** Parameter of the axis. */
  double at() {
    if (rim.kind() == EndKind.OPEN_SQUARE || rim.kind() == EndKind.OPEN_SLANTED) {
      return (rim.wMin() + rim.wMax()) / 2;
    }
    return rim.kind() == EndKind.OPEN_CURVED ? felt().orElse(rim.outerW()) : rim.outerW();
  }

  private OptionalDouble felt() {
    double before = Double.NaN;
    for (double off = STEP; off <= bore.radius(); off += STEP) {
      OptionalDouble now = flatAt(bore.radius() + off);
      if (now.isPresent() && Math.abs(now.getAsDouble() - before) <= WebShape.SIZE_SLACK) {
        return now;
      }
      before = now.orElse(Double.NaN);
    }
    return OptionalDouble.empty();
  }

  /** Middle of the face at a distance from the axis, if it is flat there. */
  private OptionalDouble flatAt(double radius) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double angle : BESIDE) {
      double sum = height(radius, angle) + height(radius, angle + Math.PI);
      low = Math.min(low, sum / 2);
      high = Math.max(high, sum / 2);
      if (Double.isNaN(sum)) {
        return OptionalDouble.empty();
      }
    }
    return high - low <= WebShape.SIZE_SLACK
        ? OptionalDouble.of((low + high) / 2)
        : OptionalDouble.empty();
  }

  /** Where a line along the axis leaves the solid; NaN if it does not. */
  private double height(double radius, double angle) {
    Vec3 w = bore.axis().direction();
    Vec3 out = down.times(Math.cos(angle)).plus(w.cross(down).times(Math.sin(angle))).times(radius);
    Vec3 start = bore.axis().origin().plus(out);
    List<Passage> passages = around.passages(start, w.times(side), around.size());
    return passages.isEmpty() || !passages.get(0).leaves()
        ? Double.NaN
        : side * passages.get(0).at();
  }
}
