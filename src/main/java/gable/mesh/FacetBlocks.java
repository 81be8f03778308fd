package gable.mesh;

import gable.geom.Box3;
import java.util.Arrays;

/**
 * The facets of a mesh in blocks of neighbours: at most eight facets that follow each other in a
 * list and whose common box is no larger, by the sum of its sides, than their own boxes together.
 * So a query that meets a block for nothing wastes no more than it would on the facets.
 */
final class FacetBlocks {

  /** Facets in a block: measured flat between 4 and 16; fewer blocks, less memory. */
  private static final int MOST = 8;

  /** Where a block holds less than this on average the list has no order of its own. */
  private static final int LEAST = 3;

  private final Mesh mesh;

  /** The list; empty if facets stand in the order of their numbers. */
  private final int[] facets;

  private int[] starts;
  private int count;

  private FacetBlocks(Mesh mesh, int[] facets) {
    this.mesh = mesh;
    this.facets = facets;
    this.starts = new int[mesh.facetCount() / MOST + 2];
    cut();
  }

  /** Cuts the facets into blocks. */
  static FacetBlocks of(Mesh mesh) {
    var asListed = new FacetBlocks(mesh, new int[0]);
    if (mesh.facetCount() >= LEAST * asListed.count) {
      return asListed;
    }
    var order = new MortonOrder(mesh.box(), mesh.facetCount());
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      int a = mesh.corner(facet, 0);
      int b = mesh.corner(facet, 1);
      int c = mesh.corner(facet, 2);
      order.place(
          facet,
          (mesh.x(a) + mesh.x(b) + mesh.x(c)) / 3,
          (mesh.y(a) + mesh.y(b) + mesh.y(c)) / 3,
          (mesh.z(a) + mesh.z(b) + mesh.z(c)) / 3);
    }
    return new FacetBlocks(mesh, order.sorted());
  }

  /** Place of a block's first facet in the list; of the number of blocks, the end of the list. */
  int start(int block) {
    return starts[block];
  }

  /** The facet at a place of the list. */
  int facet(int place) {
    return facets.length == 0 ? place : facets[place];
  }

  /** Numbers of all blocks in Morton order of their middles. */
  int[] mortonOrder() {
    Box3 box = mesh.box();
    var order = new MortonOrder(box, count);
    double[] bounds = new double[6];
    for (int block = 0; block < count; block++) {
      empty(bounds);
      for (int k = starts[block]; k < starts[block + 1]; k++) {
        widen(bounds, facet(k));
      }
      order.place(
          block,
          (bounds[0] + bounds[3]) / 2,
          (bounds[1] + bounds[4]) / 2,
          (bounds[2] + bounds[5]) / 2);
    }
    return order.sorted();
  }

  private void cut() {
    double[] block = new double[6];
    double[] own = new double[6];
    double sum = 0;
    empty(block);
    for (int k = 0; k < mesh.facetCount(); k++) {
      empty(own);
      widen(own, facet(k));
      sum += extent(own);
      join(block, own);
      if (k == starts[count] + MOST || extent(block) > sum * (1 + 1e-12)) { // but for rounding
        end(k);
        System.arraycopy(own, 0, block, 0, own.length);
        sum = extent(own);
      }
    }
    if (mesh.facetCount() > 0) {
      end(mesh.facetCount());
    }
  }

  private void end(int place) {
    if (count + 2 > starts.length) {
      starts = Arrays.copyOf(starts, 2 * starts.length);
    }
    starts[++count] = place;
  }

  private static void empty(double[] bounds) {
    for (int k = 0; k < 3; k++) {
      bounds[k] = Double.POSITIVE_INFINITY;
      bounds[k + 3] = Double.NEGATIVE_INFINITY;
    }
  }

  /** Widens the bounds of a block, least coordinates and then largest, by another's. */
  private static void join(double[] bounds, double[] other) {
    for (int k = 0; k < 3; k++) {
      bounds[k] = other[k] < bounds[k] ? other[k] : bounds[k];
      bounds[k + 3] = other[k + 3] > bounds[k + 3] ? other[k + 3] : bounds[k + 3];
    }
  }

  private void widen(double[] bounds, int facet) {
    widen(mesh, facet, bounds);
  }

  /**
   * Widens bounds by a facet. Comparisons, since the library's least and largest minds NaN and the
   * sign of zero, which takes most of the time of building a tree.
   */
  static void widen(Mesh mesh, int facet, double[] bounds) {
    for (int k = 0; k < 3; k++) {
      int vertex = mesh.corner(facet, k);
      double x = mesh.x(vertex);
      double y = mesh.y(vertex);
      double z = mesh.z(vertex);
      bounds[0] = x < bounds[0] ? x : bounds[0];
      bounds[1] = y < bounds[1] ? y : bounds[1];
      bounds[2] = z < bounds[2] ? z : bounds[2];
      bounds[3] = x > bounds[3] ? x : bounds[3];
      bounds[4] = y > bounds[4] ? y : bounds[4];
      bounds[5] = z > bounds[5] ? z : bounds[5];
    }
  }

  private static double extent(double[] bounds) {
    return bounds[3] - bounds[0] + bounds[4] - bounds[1] + bounds[5] - bounds[2];
  }
}
