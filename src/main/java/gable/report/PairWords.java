package gable.report;

import gable.pairs.Evidence;
import gable.pipeline.Joint;
import gable.pipeline.Joints;
import gable.pipeline.ObjectPlace;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Sentences about joints. */
final class PairWords {

  private PairWords() {}

  /** The other halves of a feature at whatever place of its object; empty if it has none. */
  static String of(Joints joints, ObjectPlace place, String local) {
    return joints.of(place, local).stream().map(PairWords::seen).collect(Collectors.joining("; "));
  }

  private static String seen(Joints.Seen seen) {
    boolean isPin = seen.other().equals(seen.joint().pin());
    return (isPin ? "takes pin " : "goes into bore ")
        + ids(seen.other())
        + ", clearance "
        + Figures.length(seen.joint().clearance())
        + by(seen.joint().by());
  }

  private static String by(Evidence evidence) {
    return switch (evidence) {
      case POSITION -> ", as placed";
      case PATTERN -> ", by the pattern";
      case SIZE -> ", the only one that fits";
    };
  }

  /** A joint in one line. */
  static String line(Joint joint, Function<Joint.Side, String> name) {
    return "pin "
        + name.apply(joint.pin())
        + " in bore "
        + name.apply(joint.bore())
        + ", clearance "
        + Figures.length(joint.clearance())
        + by(joint.by());
  }

  /** Ids of a half in its file, and which partner that is if it is not the file itself. */
  static String ids(Joint.Side side) {
    String partner = side.file() > 0 ? " of partner " + side.file() : "";
    return bare(side) + partner;
  }

  /** Ids of a half in its file. */
  static String bare(Joint.Side side) {
    return String.join(" + ", side.ids());
  }

  /** What cannot be told, and what the user can do about it. */
  static String doubt(Joints.Uncertain doubt, Function<Joint.Side, String> name) {
    String pins = many("pin", doubt.pins(), name);
    String bores = many("bore", doubt.bores(), name);
    return switch (doubt.kind()) {
      case SEVERAL ->
          String.format(
              Locale.ROOT,
              "%s and %s fit in more than one way, and neither position nor spacing tells which"
                  + " belong together",
              pins,
              bores);
      case SPACING ->
          String.format(
              Locale.ROOT,
              "%s and %s fit by size, but not by spacing, length or place: no motion brings the"
                  + " parts together",
              pins,
              bores);
      case SEVERAL_WAYS ->
          String.format(
              Locale.ROOT,
              "%s and %s go together in more than one way, and pins of different length or bores of"
                  + " different depth change places",
              pins,
              bores);
      case SCREW ->
          String.format(
              Locale.ROOT,
              "%s may belong to %s, which is as wide as a clearance hole for a screw of that size"
                  + " (ISO 273)",
              pins,
              bores);
      case TOO_MANY ->
          String.format(
              Locale.ROOT, "%s and %s are too many for all patterns to be tried", pins, bores);
    };
  }

  /** At most a dozen by name. */
  private static String many(
      String what, List<Joint.Side> sides, Function<Joint.Side, String> name) {
    String all = sides.stream().limit(12).map(name).collect(Collectors.joining(", "));
    String more = sides.size() > 12 ? " and " + (sides.size() - 12) + " more" : "";
    return (sides.size() == 1 ? what : what + "s") + " " + all + more;
  }

  /** Name of a doubt for programs. */
  static String code(Joints.Uncertain doubt) {
    return "pair-" + Figures.word(doubt.kind());
  }
}
