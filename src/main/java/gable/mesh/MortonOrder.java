package gable.mesh;

import gable.geom.Box3;
import gable.geom.Vec3;

/**
 * The order of points along a space-filling curve in a cube (G. M. Morton, A computer oriented
 * geodetic data base, 1966), with ten bits for each coordinate; points of one cell stay in the
 * order in which they came. Linear: a radix sort.
 */
final class MortonOrder {

  private static final int RADIX_BITS = 10;
  private static final int DIGITS = 1 << RADIX_BITS;

  private final Box3 box;
  private final double scale;
  private final int[] keys;

  /** An order of {@code count} points within a box. */
  MortonOrder(Box3 box, int count) {
    this.box = box;
    this.keys = new int[count];
    Vec3 size = count == 0 ? Vec3.ZERO : box.max().minus(box.min());
    double largest = Math.max(Math.max(size.x(), size.y()), size.z());
    this.scale = largest > 0 ? (DIGITS - 1) / largest : 0;
  }

  /** Places a point. */
  void place(int index, double x, double y, double z) {
    int column = cell(x - box.min().x());
    int row = cell(y - box.min().y());
    int layer = cell(z - box.min().z());
    keys[index] = spread(column) << 2 | spread(row) << 1 | spread(layer);
  }

  private int cell(double offset) {
    return Math.max(0, Math.min(DIGITS - 1, (int) (offset * scale)));
  }

  /** All points' numbers, in order. */
  int[] sorted() {
    int[] order = new int[keys.length];
    for (int index = 0; index < order.length; index++) {
      order[index] = index;
    }
    int[] sorted = new int[keys.length];
    for (int shift = 0; shift < 3 * RADIX_BITS; shift += RADIX_BITS) {
      int[] start = new int[DIGITS + 1];
      for (int key : keys) {
        start[(key >>> shift & DIGITS - 1) + 1]++;
      }
      for (int digit = 0; digit < DIGITS; digit++) {
        start[digit + 1] += start[digit];
      }
      for (int index : order) {
        sorted[start[keys[index] >>> shift & DIGITS - 1]++] = index;
      }
      int[] swap = order;
      order = sorted;
      sorted = swap;
    }
    return order;
  }

  /** Puts two zero bits between the ten bits of {@code value}. */
  private static int spread(int value) {
    int v = (value | value << 16) & 0x030000FF;
    v = (v | v << 8) & 0x0300F00F;
    v = (v | v << 4) & 0x030C30C3;
    return (v | v << 2) & 0x09249249;
  }
}
