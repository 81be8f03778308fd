package gable.cli;

import gable.geom.Vec3;
import gable.pipeline.Choice;
import gable.pipeline.Settings;
import gable.pipeline.Settings.Handling;
import gable.pipeline.Settings.MixedOrientation;
import gable.pipeline.Settings.UnknownParts;
import gable.plan.Limits;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Turns options into settings: words into numbers, degrees into radians. */
final class Wishes {

  private static final double FLATTEST = 1;
  private static final double STEEPEST = 89;

  private final Given call;

  Wishes(Given call) {
    this.call = call;
  }

  /**
   * The settings that the options ask for.
   *
   * @param installed names of the reshapers that there are
   */
  Settings settings(Set<String> installed) throws WrongCall {
    return new Settings(
        limits(),
        up(),
        choice(installed),
        new Handling(
            oneOf(Grammar.MIXED, MixedOrientation.class, MixedOrientation.CLONE),
            oneOf(Grammar.UNKNOWN, UnknownParts.class, UnknownParts.KEEP),
            call.has(Grammar.JOIN)),
        Runtime.getRuntime().availableProcessors());
  }

  /** What the user should know about the settings besides what he asked for. */
  Optional<String> remark() throws WrongCall {
    double needed = slopeForLayers();
    return needed <= askedSlope()
        ? Optional.empty()
        : Optional.of(
            String.format(
                Locale.ROOT,
                "the slope limit is raised to %.1f degrees: with layers of %s mm and lines of %s mm"
                    + " anything flatter hangs out by more than half a line",
                Math.toDegrees(needed),
                text(Grammar.LAYER),
                text(Grammar.LINE)));
  }

  /** Where JSON goes, if it is wanted. */
  Optional<String> json() {
    return optional(Grammar.JSON);
  }

  /** Whether only errors are shown. */
  boolean quiet() {
    return call.has(Grammar.QUIET);
  }

  private Limits limits() throws WrongCall {
    Limits usual = Limits.usual();
    double smallest = length(Grammar.SMALLEST, usual.smallestBore());
    double largest = length(Grammar.LARGEST, usual.largestBore());
    if (largest < smallest) {
      throw new WrongCall("--largest-bore is below the smallest bore to change: nothing is left");
    }
    return new Limits(
        Math.max(askedSlope(), slopeForLayers()),
        smallest,
        largest,
        length(Grammar.ROOF, usual.leastRoof()),
        length(Grammar.BRIDGE, usual.longestBridge()),
        joint());
  }

  private Limits.Joint joint() throws WrongCall {
    Limits.Joint usual = Limits.Joint.USUAL;
    boolean line = call.has(Grammar.LINE);
    double web = line ? Limits.Joint.webOf(positive(Grammar.LINE)) : usual.webWidth();
    if (web > Limits.Joint.THICKEST_WEB && !call.has(Grammar.WEB_WIDTH)) {
      throw new WrongCall("--line: lines of " + text(Grammar.LINE) + " mm are too wide for a web");
    }
    double tip = size(Grammar.TIP, Double.NaN, Limits.Joint.LARGEST_TIP);
    return new Limits.Joint(
        Double.isNaN(tip) ? usual.tip() : OptionalDouble.of(tip),
        size(Grammar.LEAD_IN, usual.leadIn(), Limits.Joint.LARGEST_LEAD_IN),
        size(Grammar.WEB_WIDTH, web, Limits.Joint.THICKEST_WEB),
        size(Grammar.CLEARANCE, usual.clearance(), Limits.Joint.LARGEST_CLEARANCE),
        oneOf(Grammar.GUSSET, Limits.Joint.Webs.class, usual.webs()));
  }

  /** A length above zero, and not above what can be meant. */
  private double size(String option, double usual, double largest) throws WrongCall {
    if (optional(option).isEmpty()) {
      return usual;
    }
    double value = positive(option);
    if (value > largest) {
      throw new WrongCall(
          String.format(
              Locale.ROOT,
              "%s is a length in millimetres of at most %.0f, not %s",
              option,
              largest,
              text(option)));
    }
    return value;
  }

  private double askedSlope() throws WrongCall {
    if (optional(Grammar.SLOPE).isEmpty()) {
      return Limits.usual().slope();
    }
    double degrees = number(Grammar.SLOPE, text(Grammar.SLOPE));
    if (degrees < FLATTEST || degrees > STEEPEST) {
      throw new WrongCall(
          "--slope is in degrees from the horizontal, between 1 and 89, not "
              + text(Grammar.SLOPE));
    }
    return Math.toRadians(degrees);
  }

  /** The slope that layer height and line width need; 0 if they were not given. */
  private double slopeForLayers() throws WrongCall {
    boolean layer = call.has(Grammar.LAYER);
    if (layer && !call.has(Grammar.LINE)) {
      throw new WrongCall("--layer needs --line, both in millimetres");
    }
    if (!layer) {
      return 0;
    }
    double needed = Limits.slopeFor(positive(Grammar.LAYER), positive(Grammar.LINE));
    if (needed > Math.toRadians(STEEPEST)) {
      throw new WrongCall("--layer and --line: such layers leave no slope below 89 degrees");
    }
    return needed;
  }

  /** The direction that is up. */
  Vec3 up() throws WrongCall {
    Optional<String> given = optional(Grammar.UP);
    if (given.isEmpty()) {
      return Vec3.Z;
    }
    String[] words = given.get().split(",", -1);
    if (words.length != 3) {
      throw new WrongCall("--up takes three numbers such as 0,1,0, not '" + given.get() + "'");
    }
    Vec3 up =
        new Vec3(
            number(Grammar.UP, words[0]),
            number(Grammar.UP, words[1]),
            number(Grammar.UP, words[2]));
    if (!(up.norm() > 0) || Double.isInfinite(up.norm())) {
      throw new WrongCall("--up is no direction: '" + given.get() + "'");
    }
    return up;
  }

  private Choice choice(Set<String> installed) throws WrongCall {
    return new Choice(
        set(Grammar.ONLY),
        set(Grammar.SKIP),
        known(Grammar.WITH, installed),
        known(Grammar.WITHOUT, installed));
  }

  private Set<String> known(String option, Set<String> installed) throws WrongCall {
    Set<String> names = set(option);
    for (String name : names) {
      if (!installed.contains(name)) {
        throw new WrongCall(
            option
                + ": no reshaper '"
                + name
                + "' is installed; there are: "
                + String.join(", ", new TreeSet<>(installed)));
      }
    }
    return names;
  }

  private Set<String> set(String option) {
    return call.values(option).stream().map(String::strip).collect(Collectors.toSet());
  }

  private <E extends Enum<E>> E oneOf(String option, Class<E> kind, E usual) throws WrongCall {
    Optional<String> given = optional(option);
    if (given.isEmpty()) {
      return usual;
    }
    for (E constant : kind.getEnumConstants()) {
      if (constant.name().toLowerCase(Locale.ROOT).equals(given.get())) {
        return constant;
      }
    }
    String all =
        Arrays.stream(kind.getEnumConstants())
            .map(constant -> constant.name().toLowerCase(Locale.ROOT))
            .collect(Collectors.joining(" or "));
    throw new WrongCall(option + " is " + all + ", not '" + given.get() + "'");
  }

  private double length(String option, double usual) throws WrongCall {
    if (optional(option).isEmpty()) {
      return usual;
    }
    double value = number(option, text(option));
    if (value < 0) {
      throw new WrongCall(option + " cannot be negative: " + text(option));
    }
    return value;
  }

  private double positive(String option) throws WrongCall {
    double value = number(option, text(option));
    if (value <= 0) {
      throw new WrongCall(option + " must be above 0 mm: " + text(option));
    }
    return value;
  }

  private static double number(String option, String word) throws WrongCall {
    if (!word.strip().matches("[-+]?([0-9]+(\\.[0-9]*)?|\\.[0-9]+)([eE][-+]?[0-9]+)?")) {
      throw new WrongCall(option + ": '" + word + "' is not a number");
    }
    double value = Double.parseDouble(word.strip());
    if (Double.isInfinite(value)) {
      throw new WrongCall(option + ": " + word + " is too large");
    }
    return value;
  }

  private Optional<String> optional(String option) {
    return call.value(option);
  }

  private String text(String option) {
    return call.value(option).orElse("");
  }
}
