package gable.plan;

import java.util.Arrays;
import java.util.Locale;

/**
 * Why a feature stays as it is.
 *
 * @param code stable name for programs
 * @param sentence for people: what was found, what was needed
 */
public record Reason(String code, String sentence) {

  /** Code of a reason that depends on time, not only on the input. */
  public static final String RESHAPER_LATE = "reshaper-late";

  /** Code of a reason that says that a reshaper failed. */
  public static final String RESHAPER_FAILED = "reshaper-failed";

  /** Code of a reason that says that a pin has its web, which counts as made. */
  public static final String HAS_WEB = "has-web";

  /** Code of a reason that says that the web passes through the bore as it is. */
  public static final String ROOM_ENOUGH = "room-enough";

  /** The bore is narrower than the user wants changed. */
  public static Reason belowSmallest(double diameter, double smallest) {
    return of(
        "below-smallest",
        "diameter %.2f mm is below the smallest bore to change, %.2f mm",
        diameter,
        smallest);
  }

  /** The bore is wider than the user wants changed. */
  public static Reason aboveLargest(double diameter, double largest) {
    return of(
        "above-largest",
        "diameter %.2f mm is above the largest bore to change, %.2f mm",
        diameter,
        largest);
  }

  /** The axis is so steep that the crown is steep enough. */
  public static Reason steepEnough(double tiltDeg, double limitDeg) {
    return of(
        "steep-enough",
        "the axis rises by %.1f degrees, at or above the slope limit of %.1f: it needs no roof",
        tiltDeg,
        limitDeg);
  }

  /** There is a roof already. */
  public static Reason alreadyPeaked() {
    return new Reason("already-peaked", "it has a peaked, flat or rounded roof already");
  }

  /** The wall is a polygon. */
  public static Reason polygon(int sides) {
    return of("polygon", "it has %d flat sides, too few to be taken for a round bore", sides);
  }

  /** The wall is not round all the way. */
  public static Reason notRound(double coveredDeg) {
    if (coveredDeg >= 359.5) {
      return new Reason(
          "not-round",
          "the round wall goes all around, but not from end to end: a slit, a groove or facets that"
              + " do not follow it break it, and a roof might spoil what they are for");
    }
    return of(
        "not-round",
        "the round wall covers only %.0f of 360 degrees: a roof might spoil what it is for",
        coveredDeg);
  }

  /** The wall carries a thread. */
  public static Reason thread() {
    return new Reason("thread", "it carries a thread, which a roof would cut");
  }

  /** Too little material over every allowed roof. */
  public static Reason thinRoof(double left, double least) {
    if (left < 0.005) {
      return of(
          "thin-roof",
          "the roof would break through the surface above it, of which at least %.2f mm must be"
              + " left",
          least);
    }
    return of(
        "thin-roof",
        "the roof would leave %.2f mm above it, less than the least roof of %.2f mm",
        left,
        least);
  }

  /** The flat top that would leave enough material is too wide. */
  public static Reason longBridge(double bridge, double longest, double left, double least) {
    return of(
        "long-bridge",
        "a full peak leaves %.2f mm (least %.2f), and a flat top that leaves enough spans %.2f mm,"
            + " more than the longest bridge of %.2f mm",
        left,
        least,
        bridge,
        longest);
  }

  /** The mouth is there for the head of a screw. */
  public static Reason screwSeat(String screw) {
    return of("screw-seat", "it is the seat for an %s countersunk screw, which stays", screw);
  }

  /** Another body fills the room over the bore. */
  public static Reason plugged() {
    return new Reason(
        "plugged", "another body overlaps the place of the roof, so the change would not show");
  }

  /** The ridge does not come out through the mouth. */
  public static Reason ridgeInside(String end) {
    return of("ridge-inside", "the ridge would not leave through the mouth at its %s end", end);
  }

  /** No variant could be made and proved. */
  public static Reason notProved(String why) {
    return of("not-proved", "the changed part could not be proved sound: %s", why);
  }

  /**
   * Something stands too near to what would change.
   *
   * @param where what it is near to, such as "the tip"
   * @param gap how far it is off, in millimetres
   * @param apart how far it has to be off, in millimetres
   */
  public static Reason tooClose(String where, double gap, double apart) {
    return of(
        "too-close",
        "something stands %.2f mm from %s; nearer than %.2f mm they print as one",
        Math.max(0, gap),
        where,
        apart);
  }

  /** The object has taken as much work as one object may. */
  public static Reason outOfBudget() {
    return new Reason(
        "budget",
        "the features before it took all the work that one object may take; to do: reshape the"
            + " result again, or split the object");
  }

  /** The user left it out. */
  public static Reason notChosen() {
    return new Reason("not-chosen", "it was left out by the choice of features");
  }

  /** A plug-in failed. */
  public static Reason reshaperFailed(String name, String why) {
    return of(RESHAPER_FAILED, "the reshaper '%s' failed: %s", name, why);
  }

  /** A plug-in took too long; another run may go otherwise. */
  public static Reason reshaperLate(String name, String why) {
    return of(RESHAPER_LATE, "the reshaper '%s' failed: %s", name, why);
  }

  /** A length that rounds to nothing is shown as 0.00, not as -0.00. */
  private static Object withoutNegativeZero(Object value) {
    return value instanceof Double number && Math.abs(number) < 0.005 ? (Object) 0.0 : value;
  }

  private static Reason of(String code, String format, Object... values) {
    Object[] shown = Arrays.stream(values).map(Reason::withoutNegativeZero).toArray();
    return new Reason(code, String.format(Locale.ROOT, format, shown));
  }

  /** The same reason with more to say. */
  public Reason because(String why) {
    return why.isEmpty() ? this : new Reason(code, sentence + ": " + why);
  }
}
