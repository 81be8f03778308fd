package gable.mesh;

import gable.geom.Box3;
import gable.geom.Vec3;
import java.util.function.IntConsumer;

/**
 * Finds the facets near a place: a balanced binary tree of boxes over the facets, which are sorted
 * along a space-filling curve (Morton order) of their centres. Built in linear time with a radix
 * sort; a query costs the logarithm of the mesh plus what it finds. Boxes are held in single
 * precision, rounded outwards.
 */
public final class FacetTree {

  /** Facets in a leaf: measured flat between 4 and 16; fewer leaves, less memory. */
  private static final int LEAF = 8;

  private static final int RADIX_BITS = 10;

  private final Mesh mesh;
  private final int[] order;
  private final int leaves;
  private final float[] boxes;

  private FacetTree(Mesh mesh, int[] order) {
    this.mesh = mesh;
    this.order = order;
    int needed = Math.max(1, (order.length + LEAF - 1) / LEAF);
    this.leaves = Integer.highestOneBit(Math.max(1, needed - 1)) * (needed > 1 ? 2 : 1);
    this.boxes = new float[6 * 2 * leaves];
    fillBoxes();
  }

  /** The tree of a mesh. */
  public static FacetTree of(Mesh mesh) {
    return new FacetTree(mesh, mortonOrder(mesh));
  }

  /** Calls {@code visitor} once with every facet whose box meets the given one. */
  public void visit(Box3 box, IntConsumer visitor) {
    int[] stack = new int[64];
    int depth = 0;
    stack[depth++] = 1;
    while (depth > 0) {
      int node = stack[--depth];
      if (!nodeMeets(node, box)) {
        continue;
      }
      if (node >= leaves) {
        visitLeaf(node - leaves, box, visitor);
      } else {
        stack[depth++] = 2 * node + 1;
        stack[depth++] = 2 * node;
      }
    }
  }

  /**
   * Calls {@code visitor} with every facet whose box a ray may meet (and with some that it does
   * not).
   *
   * @param from start of the ray
   * @param direction its direction
   * @param length its length in multiples of the direction
   */
  public void visitAlong(Vec3 from, Vec3 direction, double length, IntConsumer visitor) {
    int[] stack = new int[64];
    int depth = 0;
    stack[depth++] = 1;
    while (depth > 0) {
      int node = stack[--depth];
      if (!nodeOnRay(node, from, direction, length)) {
        continue;
      }
      if (node >= leaves) {
        int first = (node - leaves) * LEAF;
        for (int k = first; k < Math.min(first + LEAF, order.length); k++) {
          visitor.accept(order[k]);
        }
      } else {
        stack[depth++] = 2 * node + 1;
        stack[depth++] = 2 * node;
      }
    }
  }

  private void visitLeaf(int leaf, Box3 box, IntConsumer visitor) {
    int first = leaf * LEAF;
    for (int k = first; k < Math.min(first + LEAF, order.length); k++) {
      if (facetMeets(order[k], box)) {
        visitor.accept(order[k]);
      }
    }
  }

  private boolean facetMeets(int facet, Box3 box) {
    int a = mesh.corner(facet, 0);
    int b = mesh.corner(facet, 1);
    int c = mesh.corner(facet, 2);
    return overlap(mesh.x(a), mesh.x(b), mesh.x(c), box.min().x(), box.max().x())
        && overlap(mesh.y(a), mesh.y(b), mesh.y(c), box.min().y(), box.max().y())
        && overlap(mesh.z(a), mesh.z(b), mesh.z(c), box.min().z(), box.max().z());
  }

  private static boolean overlap(double a, double b, double c, double low, double high) {
    return (a <= high || b <= high || c <= high) && (a >= low || b >= low || c >= low);
  }

  private boolean nodeMeets(int node, Box3 box) {
    int at = 6 * node;
    return boxes[at] <= box.max().x()
        && boxes[at + 3] >= box.min().x()
        && boxes[at + 1] <= box.max().y()
        && boxes[at + 4] >= box.min().y()
        && boxes[at + 2] <= box.max().z()
        && boxes[at + 5] >= box.min().z();
  }

  private boolean nodeOnRay(int node, Vec3 from, Vec3 direction, double length) {
    double enter = 0;
    double leave = length;
    for (int k = 0; k < 3; k++) {
      double low = boxes[6 * node + k] - from.get(k);
      double high = boxes[6 * node + 3 + k] - from.get(k);
      double d = direction.get(k);
      if (d == 0) {
        if (low > 0 || high < 0) {
          return false;
        }
        continue;
      }
      double one = low / d;
      double other = high / d;
      enter = Math.max(enter, Math.min(one, other));
      leave = Math.min(leave, Math.max(one, other));
    }
    // a box that is flat and exactly square to the ray is entered and left at one rounded value
    return enter <= leave + 1e-9 * Math.abs(leave);
  }

  private void fillBoxes() {
    for (int leaf = 0; leaf < leaves; leaf++) {
      fillLeaf(leaf);
    }
    for (int node = leaves - 1; node >= 1; node--) {
      for (int k = 0; k < 3; k++) {
        boxes[6 * node + k] = Math.min(boxes[12 * node + k], boxes[12 * node + 6 + k]);
        boxes[6 * node + 3 + k] = Math.max(boxes[12 * node + 3 + k], boxes[12 * node + 9 + k]);
      }
    }
  }

  private void fillLeaf(int leaf) {
    int at = 6 * (leaves + leaf);
    for (int k = 0; k < 3; k++) {
      boxes[at + k] = Float.POSITIVE_INFINITY;
      boxes[at + 3 + k] = Float.NEGATIVE_INFINITY;
    }
    for (int k = leaf * LEAF; k < Math.min((leaf + 1) * LEAF, order.length); k++) {
      for (int corner = 0; corner < 3; corner++) {
        int vertex = mesh.corner(order[k], corner);
        widen(at, mesh.x(vertex));
        widen(at + 1, mesh.y(vertex));
        widen(at + 2, mesh.z(vertex));
      }
    }
  }

  private void widen(int at, double value) {
    float near = (float) value;
    boxes[at] = Math.min(boxes[at], near <= value ? near : Math.nextDown(near));
    boxes[at + 3] = Math.max(boxes[at + 3], near >= value ? near : Math.nextUp(near));
  }

  private static int[] mortonOrder(Mesh mesh) {
    int count = mesh.facetCount();
    int[] keys = mortonKeys(mesh);
    int[] order = new int[count];
    for (int facet = 0; facet < count; facet++) {
      order[facet] = facet;
    }
    int[] sorted = new int[count];
    for (int shift = 0; shift < 30; shift += RADIX_BITS) {
      int[] start = new int[(1 << RADIX_BITS) + 1];
      for (int facet = 0; facet < count; facet++) {
        start[(keys[facet] >>> shift & (1 << RADIX_BITS) - 1) + 1]++;
      }
      for (int digit = 0; digit < 1 << RADIX_BITS; digit++) {
        start[digit + 1] += start[digit];
      }
      for (int facet : order) {
        sorted[start[keys[facet] >>> shift & (1 << RADIX_BITS) - 1]++] = facet;
      }
      int[] swap = order;
      order = sorted;
      sorted = swap;
    }
    return order;
  }

  /** Thirty-bit Morton codes of the facets' centres within the box of the mesh. */
  private static int[] mortonKeys(Mesh mesh) {
    Box3 box = mesh.box();
    Vec3 size = mesh.facetCount() == 0 ? Vec3.ZERO : box.max().minus(box.min());
    double largest = Math.max(Math.max(size.x(), size.y()), size.z());
    double scale = largest > 0 ? 1023.0 / (3 * largest) : 0;
    int[] keys = new int[mesh.facetCount()];
    for (int facet = 0; facet < keys.length; facet++) {
      int a = mesh.corner(facet, 0);
      int b = mesh.corner(facet, 1);
      int c = mesh.corner(facet, 2);
      int x = (int) ((mesh.x(a) + mesh.x(b) + mesh.x(c) - 3 * box.min().x()) * scale);
      int y = (int) ((mesh.y(a) + mesh.y(b) + mesh.y(c) - 3 * box.min().y()) * scale);
      int z = (int) ((mesh.z(a) + mesh.z(b) + mesh.z(c) - 3 * box.min().z()) * scale);
      keys[facet] = spread(x) << 2 | spread(y) << 1 | spread(z);
    }
    return keys;
  }

  /** Puts two zero bits between the ten bits of {@code value}. */
  private static int spread(int value) {
    int v = Math.max(0, Math.min(1023, value));
    v = (v | v << 16) & 0x030000FF;
    v = (v | v << 8) & 0x0300F00F;
    v = (v | v << 4) & 0x030C30C3;
    return (v | v << 2) & 0x09249249;
  }
}
