package gable.mesh;

import gable.geom.Beam;
import gable.geom.Box3;
import gable.geom.Vec3;
import java.util.Arrays;
import java.util.function.DoubleSupplier;
import java.util.function.IntConsumer;

/**
 * Finds the facets near a place: a balanced binary tree of boxes over small blocks of facets, which
 * are sorted along a space-filling curve (Morton order) of their centres. A query costs the
 * logarithm of the mesh plus what it finds. Boxes are held in single precision, rounded outwards.
 *
 * <p>Most producers list facets that are neighbours one after the other. So blocks are cut from the
 * list as it is, wherever the box of a block is no larger than its facets one by one; sorting an
 * eighth as many blocks is cheap. A list without such an order is sorted first, facet by facet.
 * Either way the cost is linear (radix sort).
 */
public final class FacetTree {

  private final Mesh mesh;
  private final FacetBlocks blocks;
  private final int[] order;
  private final int leaves;
  private final float[] boxes;

  private FacetTree(Mesh mesh, FacetBlocks blocks) {
    this.mesh = mesh;
    this.blocks = blocks;
    this.order = blocks.mortonOrder();
    this.leaves = Integer.highestOneBit(Math.max(1, 2 * order.length - 1));
    this.boxes = new float[6 * 2 * leaves];
    fillBoxes();
  }

  /** The tree of a mesh. */
  public static FacetTree of(Mesh mesh) {
    return new FacetTree(mesh, FacetBlocks.of(mesh));
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
   * Calls {@code visitor} with every facet that may reach below a plane inside a box (and with some
   * that do not), those that may be lowest first.
   *
   * @param box where
   * @param normal direction that counts as up, n
   * @param bound asked again and again: places with n · p at or above it need not be visited
   */
  public void visitBelow(Box3 box, Vec3 normal, DoubleSupplier bound, IntConsumer visitor) {
    int[] stack = new int[64];
    int depth = 0;
    stack[depth++] = 1;
    while (depth > 0) {
      int node = stack[--depth];
      if (!nodeMeets(node, box) || !(lowest(node, box, normal) < bound.getAsDouble())) {
        continue;
      }
      if (node >= leaves) {
        visitLeaf(
            node - leaves,
            box,
            facet -> {
              if (lowestOfFacet(facet, box, normal) < bound.getAsDouble()) {
                visitor.accept(facet);
              }
            });
      } else {
        int first = lowest(2 * node, box, normal) <= lowest(2 * node + 1, box, normal) ? 0 : 1;
        stack[depth++] = 2 * node + 1 - first;
        stack[depth++] = 2 * node + first;
      }
    }
  }

  /** Lower bound of n · p in what a node's box and another have in common. */
  private double lowest(int node, Box3 box, Vec3 n) {
    int at = 6 * node;
    return lowest(n.x(), boxes[at], boxes[at + 3], box.min().x(), box.max().x())
        + lowest(n.y(), boxes[at + 1], boxes[at + 4], box.min().y(), box.max().y())
        + lowest(n.z(), boxes[at + 2], boxes[at + 5], box.min().z(), box.max().z());
  }

  /** Lower bound of n · p in what a facet's box and another have in common. */
  private double lowestOfFacet(int facet, Box3 box, Vec3 n) {
    int a = mesh.corner(facet, 0);
    int b = mesh.corner(facet, 1);
    int c = mesh.corner(facet, 2);
    double xLow = Math.min(mesh.x(a), Math.min(mesh.x(b), mesh.x(c)));
    double xHigh = Math.max(mesh.x(a), Math.max(mesh.x(b), mesh.x(c)));
    double yLow = Math.min(mesh.y(a), Math.min(mesh.y(b), mesh.y(c)));
    double yHigh = Math.max(mesh.y(a), Math.max(mesh.y(b), mesh.y(c)));
    double zLow = Math.min(mesh.z(a), Math.min(mesh.z(b), mesh.z(c)));
    double zHigh = Math.max(mesh.z(a), Math.max(mesh.z(b), mesh.z(c)));
    return lowest(n.x(), xLow, xHigh, box.min().x(), box.max().x())
        + lowest(n.y(), yLow, yHigh, box.min().y(), box.max().y())
        + lowest(n.z(), zLow, zHigh, box.min().z(), box.max().z());
  }

  /** Least of n x for x in two ranges at once. */
  private static double lowest(double n, double low, double high, double least, double most) {
    return n > 0 ? n * Math.max(low, least) : n * Math.min(high, most);
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
    Beam beam = new Beam(from, direction, length);
    int[] stack = new int[64];
    int depth = 0;
    stack[depth++] = 1;
    while (depth > 0) {
      int node = stack[--depth];
      if (!beam.meets(boxes, 6 * node)) {
        continue;
      }
      if (node >= leaves) {
        if (node - leaves < order.length) {
          int block = order[node - leaves];
          for (int k = blocks.start(block); k < blocks.start(block + 1); k++) {
            visitor.accept(blocks.facet(k));
          }
        }
      } else {
        stack[depth++] = 2 * node + 1;
        stack[depth++] = 2 * node;
      }
    }
  }

  private void visitLeaf(int leaf, Box3 box, IntConsumer visitor) {
    if (leaf >= order.length) {
      return;
    }
    int end = blocks.start(order[leaf] + 1);
    for (int k = blocks.start(order[leaf]); k < end; k++) {
      int facet = blocks.facet(k);
      if (facetMeets(facet, box)) {
        visitor.accept(facet);
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

  private void fillBoxes() {
    double[] bounds = new double[6];
    for (int leaf = 0; leaf < leaves; leaf++) {
      fillLeaf(leaf, bounds);
    }
    for (int at = 6 * (leaves - 1); at >= 6; at -= 6) {
      for (int k = at; k < at + 3; k++) {
        int one = k + at; // the children of node n are 2 n and 2 n + 1
        boxes[k] = boxes[one] < boxes[one + 6] ? boxes[one] : boxes[one + 6];
        boxes[k + 3] = boxes[one + 3] > boxes[one + 9] ? boxes[one + 3] : boxes[one + 9];
      }
    }
  }

  private void fillLeaf(int leaf, double[] bounds) {
    int at = 6 * (leaves + leaf);
    Arrays.fill(bounds, 0, 3, Double.POSITIVE_INFINITY);
    Arrays.fill(bounds, 3, 6, Double.NEGATIVE_INFINITY);
    if (leaf < order.length) {
      int end = blocks.start(order[leaf] + 1);
      for (int k = blocks.start(order[leaf]); k < end; k++) {
        FacetBlocks.widen(mesh, blocks.facet(k), bounds);
      }
    }
    for (int k = 0; k < 3; k++) {
      boxes[at + k] = atMost(bounds[k]);
      boxes[at + 3 + k] = -atMost(-bounds[3 + k]);
    }
  }

  /** The largest float that is no larger. */
  private static float atMost(double value) {
    float near = (float) value;
    return near <= value ? near : Math.nextDown(near);
  }
}
