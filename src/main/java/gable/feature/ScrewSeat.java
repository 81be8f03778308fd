package gable.feature;

import java.util.Optional;

/**
 * The seat of a countersunk screw: a cone of 90 degrees at the mouth of a clearance hole, as wide
 * as a standard has it for that screw. The head bears on the cone, so it must stay as it is.
 *
 * <p>Outer diameters in millimetres: ISO 15065:2005, and DIN 74 form A (an older edition), each as
 * second-hand copies have it (the originals were not at hand).
 *
 * @param thread nominal diameter of the screw
 * @param side −1 if the seat is at the low end of the bore, 1 if it is at the high one
 */
public record ScrewSeat(double thread, int side) {

  /** Thread, outer diameter. */
  private static final double[][] ISO_15065 = {
    {2, 4.4}, {2.5, 5.5}, {3, 6.3}, {4, 9.4}, {5, 10.4}, {6, 12.6}, {8, 17.3}, {10, 20.0},
  };

  /** Thread, outer diameter. */
  private static final double[][] DIN_74_A = {
    {3, 6.5}, {4, 8.6}, {5, 10.4}, {6, 12.4}, {8, 16.4},
  };

  /** Outer diameters this near are one: half the distance of the two standards for M3 and M6. */
  private static final double SAME = 0.1;

  /** How far the cone may lean from 45 degrees to the axis, in radians: what facets may do. */
  private static final double LEAN = Math.toRadians(2);

  /** Name of the screw, such as {@code M3}. */
  public String screw() {
    boolean whole = thread == Math.rint(thread);
    return "M" + (whole ? String.valueOf((int) thread) : String.valueOf(thread));
  }

  /** The seat at either end of a bore. */
  public static Optional<ScrewSeat> of(Bore bore) {
    return at(bore, -1).or(() -> at(bore, 1));
  }

  /** The seat at one end of a bore. */
  public static Optional<ScrewSeat> at(Bore bore, int side) {
    Rim rim = side < 0 ? bore.low() : bore.high();
    Optional<ClearanceHole> hole = ClearanceHole.of(2 * bore.radius());
    if (hole.isEmpty() || (rim.kind() != EndKind.COUNTERSUNK && rim.kind() != EndKind.CHAMFERED)) {
      return Optional.empty();
    }
    double inner = side < 0 ? rim.wMin() : rim.wMax();
    double depth = side * (rim.outerW() - inner);
    double angle = Math.atan2(rim.outerRadius() - bore.radius(), depth);
    double thread = hole.get().thread();
    return Math.abs(angle - Math.PI / 4) <= LEAN && isOuter(thread, 2 * rim.outerRadius())
        ? Optional.of(new ScrewSeat(thread, side))
        : Optional.empty();
  }

  /** Whether a standard has a seat of this outer diameter for a screw. */
  static boolean isOuter(double thread, double diameter) {
    for (double[][] table : new double[][][] {ISO_15065, DIN_74_A}) {
      for (double[] row : table) {
        if (row[0] == thread && Math.abs(row[1] - diameter) <= SAME) {
          return true;
        }
      }
    }
    return false;
  }
}
