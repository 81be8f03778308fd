package gable.feature;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A hole that a screw goes through.
 *
 * <p>Diameters in millimetres: ISO 273:1979, as two copies that agree have it (the original was not
 * at hand). Older copies with 13, 14 and 15 for M12 are another edition.
 *
 * @param thread nominal diameter of the screw
 * @param diameter of the hole
 * @param fit how loose
 */
public record ClearanceHole(double thread, double diameter, Fit fit) {

  /** The series of the standard. */
  public enum Fit {
    /** Tolerance H12. */
    FINE,
    /** Tolerance H13. */
    MEDIUM,
    /** Tolerance H14. */
    COARSE
  }

  /** Thread, fine, medium, coarse. */
  private static final double[][] ISO_273 = {
    {2, 2.2, 2.4, 2.6},
    {2.5, 2.7, 2.9, 3.1},
    {3, 3.2, 3.4, 3.6},
    {4, 4.3, 4.5, 4.8},
    {5, 5.3, 5.5, 5.8},
    {6, 6.4, 6.6, 7},
    {8, 8.4, 9, 10},
    {10, 10.5, 11, 12},
    {12, 13, 13.5, 14.5},
    {16, 17, 17.5, 18.5},
    {20, 21, 22, 24},
  };

  /** Holes are drawn as the standard has them, and measured to a few micrometres on noisy walls. */
  static final double SAME = 0.02;

  /** All of the standard's that are listed here. */
  public static List<ClearanceHole> all() {
    List<ClearanceHole> all = new ArrayList<>();
    for (double[] row : ISO_273) {
      all.add(new ClearanceHole(row[0], row[1], Fit.FINE));
      all.add(new ClearanceHole(row[0], row[2], Fit.MEDIUM));
      all.add(new ClearanceHole(row[0], row[3], Fit.COARSE));
    }
    return all;
  }

  /** The one with a diameter, if there is one. */
  public static Optional<ClearanceHole> of(double diameter) {
    return all().stream()
        .filter(hole -> Math.abs(hole.diameter - diameter) <= SAME)
        .min(Comparator.comparingDouble(hole -> Math.abs(hole.diameter - diameter)));
  }
}
