package gable.feature;

import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Numbers bores by where they are. */
final class BoreOrder {

  /** Positions are compared in cells of this size, so that rounding does not swap neighbours. */
  private static final double CELL = 1e-3;

  /** Cell walls are moved off the round numbers at which people put bores. */
  private static final double OFFSET = 0.000271828;

  private BoreOrder() {}

  /** The bores by height, then x, then y, then radius, then direction. */
  static List<Bore.Builder> sorted(List<Bore.Builder> bores) {
    List<Bore.Builder> sorted = new ArrayList<>(bores);
    sorted.sort(
        Comparator.comparingDouble((Bore.Builder b) -> cell(origin(b).z()))
            .thenComparingDouble(b -> cell(origin(b).x()))
            .thenComparingDouble(b -> cell(origin(b).y()))
            .thenComparingDouble(b -> cell(b.cylinder.radius()))
            .thenComparingDouble(b -> b.cylinder.w().x())
            .thenComparingDouble(b -> b.cylinder.w().y()));
    return sorted;
  }

  /** The bores in their order, named B1, B2 and so on. */
  static List<Feature> named(List<Bore.Builder> sorted) {
    List<Feature> features = new ArrayList<>();
    for (Bore.Builder builder : sorted) {
      builder.id = "B" + (features.size() + 1);
      features.add(new Bore(builder));
    }
    return features;
  }

  private static Vec3 origin(Bore.Builder bore) {
    return bore.cylinder.origin();
  }

  private static double cell(double coordinate) {
    return Math.floor((coordinate + OFFSET) / CELL);
  }
}
