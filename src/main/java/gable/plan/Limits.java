package gable.plan;

/**
 * What the user allows, in millimetres and radians.
 *
 * @param slope least slope from the horizontal that prints without support (common practice: 45
 *     degrees; measured as overhang limit by Mazlan et al., J. Adv. Ind. Technol. Appl. 1(1), 2020)
 * @param smallestBore bores of a smaller diameter stay round (common practice: leave below 3 to 5)
 * @param largestBore bores of a larger diameter stay as they are
 * @param leastRoof least material over a roof, measured straight up (common practice: 3 lines of
 *     0.4)
 * @param longestBridge longest flat span that prints without sagging (common practice: 5)
 */
public record Limits(
    double slope, double smallestBore, double largestBore, double leastRoof, double longestBridge) {

  /** Share of a line that may hang in the air (common practice, no single source: one half). */
  private static final double HANGING_SHARE = 0.5;

  /** Refuses what cannot be meant. */
  public Limits {
    require(slope > 0 && slope < Math.PI / 2, "slope limit", slope);
    require(smallestBore >= 0, "smallest bore", smallestBore);
    require(largestBore >= smallestBore, "largest bore", largestBore);
    require(leastRoof >= 0, "least roof", leastRoof);
    require(longestBridge >= 0, "longest bridge", longestBridge);
  }

  private static void require(boolean fine, String what, double value) {
    if (!fine) {
      throw new IllegalArgumentException(what + " cannot be " + value);
    }
  }

  /** The usual limits. */
  public static Limits usual() {
    return new Limits(Math.PI / 4, 4, Double.POSITIVE_INFINITY, 1.2, 5);
  }

  /**
   * The slope that a layer height and a line width need: each layer may step out by at most half a
   * line, so tan(slope) = height / (width / 2).
   */
  public static double slopeFor(double layerHeight, double lineWidth) {
    require(layerHeight > 0, "layer height", layerHeight);
    require(lineWidth > 0, "line width", lineWidth);
    return Math.atan(layerHeight / (HANGING_SHARE * lineWidth));
  }

  /** The same limits with another slope. */
  public Limits withSlope(double radians) {
    return new Limits(radians, smallestBore, largestBore, leastRoof, longestBridge);
  }
}
