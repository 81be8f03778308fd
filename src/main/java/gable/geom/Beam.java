package gable.geom;

/**
 * A piece of a line, for asking many boxes whether it meets them.
 *
 * <p>Not a record: six numbers of a box come as they are kept, without an object for each.
 */
public final class Beam {

  /** A flat box that is square to the beam is entered and left at one rounded value. */
  private static final double ROUNDING = 1e-9;

  private final Vec3 from;
  private final Vec3 direction;
  private final double length;
  private double enter;
  private double leave;

  /**
   * A beam.
   *
   * @param from its start
   * @param direction where it goes
   * @param length how far, in multiples of the direction
   */
  public Beam(Vec3 from, Vec3 direction, double length) {
    this.from = from;
    this.direction = direction;
    this.length = length;
  }

  /** True if it meets a box, or misses it by no more than rounding; an empty box is never met. */
  public boolean meets(Box3 box) {
    if (box.isEmpty()) {
      return false;
    }
    start();
    cut(from.x(), direction.x(), box.min().x(), box.max().x());
    cut(from.y(), direction.y(), box.min().y(), box.max().y());
    cut(from.z(), direction.z(), box.min().z(), box.max().z());
    return isLeft();
  }

  /**
   * The same for one of many boxes.
   *
   * @param boxes six numbers for each box, the smaller coordinates first; the first three are
   *     larger than the others where it is empty, and a beam would seem to be between them
   * @param at place of the first of them
   */
  public boolean meets(float[] boxes, int at) {
    if (boxes[at] > boxes[at + 3]) {
      return false;
    }
    start();
    cut(from.x(), direction.x(), boxes[at], boxes[at + 3]);
    cut(from.y(), direction.y(), boxes[at + 1], boxes[at + 4]);
    cut(from.z(), direction.z(), boxes[at + 2], boxes[at + 5]);
    return isLeft();
  }

  private void start() {
    enter = 0;
    leave = length;
  }

  /** Cuts off what is not between two planes square to an axis. */
  private void cut(double start, double step, double low, double high) {
    if (step != 0) {
      double one = (low - start) / step;
      double other = (high - start) / step;
      enter = Math.max(enter, Math.min(one, other));
      leave = Math.min(leave, Math.max(one, other));
    } else if (low > start || high < start) {
      leave = -1;
    }
  }

  private boolean isLeft() {
    return leave >= 0 && enter <= leave + ROUNDING * leave;
  }
}
