package gable.place;

import gable.geom.Affine3;
import gable.geom.Vec3;

/**
 * What two placements have in common that differ by a shift and a turn about z only.
 *
 * <p>For row vectors p' = p L the turn R stands on the right, L' = L R. It changes neither the
 * products of the rows of L (L R Rᵀ Lᵀ = L Lᵀ) nor its third column, and has determinant 1. The
 * other way round: equal products and equal third columns mean equal products of the rows' parts in
 * the plane, which are then the same up to a turn or a mirror of the plane, and the sign of the
 * determinant tells these two apart.
 *
 * <p>Files write turns with six or seven digits and nest them, so numbers within 2e-6 of the size
 * of the map count as equal: an angle of 2e-6 rad is 1e-4 degrees of slope, and 0.0002 mm over 100
 * mm.
 */
final class LinearClass {

  private static final double EQUAL = 2e-6;

  private final Vec3 squares;
  private final Vec3 products;
  private final Vec3 heights;
  private final boolean mirrored;

  LinearClass(Affine3 map) {
    Vec3 a = map.applyVector(Vec3.X);
    Vec3 b = map.applyVector(Vec3.Y);
    Vec3 c = map.applyVector(Vec3.Z);
    squares = new Vec3(a.dot(a), b.dot(b), c.dot(c));
    products = new Vec3(a.dot(b), b.dot(c), c.dot(a));
    heights = new Vec3(a.z(), b.z(), c.z());
    mirrored = map.determinant() < 0;
  }

  /** True if one edit serves both. */
  boolean sameAs(LinearClass other) {
    double size = Math.sqrt(squares.x() + squares.y() + squares.z());
    return mirrored == other.mirrored
        && heights.distance(other.heights) <= EQUAL * size
        && squares.distance(other.squares) <= 2 * EQUAL * size * size
        && products.distance(other.products) <= 2 * EQUAL * size * size;
  }
}
