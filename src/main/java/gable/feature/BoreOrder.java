package gable.feature;

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
    sorted.sort(Comparator.comparing(b -> b.cylinder, byPlace()));
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

  /** Order by height, then x, then y, then radius, then direction. */
  static Comparator<Cylinder> byPlace() {
    return Comparator.comparingDouble((Cylinder c) -> cell(c.origin().z()))
        .thenComparingDouble(c -> cell(c.origin().x()))
        .thenComparingDouble(c -> cell(c.origin().y()))
        .thenComparingDouble(c -> cell(c.radius()))
        .thenComparingDouble(c -> c.w().x())
        .thenComparingDouble(c -> c.w().y());
  }

  private static double cell(double coordinate) {
    return Math.floor((coordinate + OFFSET) / CELL);
  }
}
