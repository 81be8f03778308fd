package gable.compare;

import gable.compare.FeaturePair.Placed;
import gable.feature.Bore;
import gable.feature.Feature;
import gable.geom.Axis;
import gable.geom.Vec3;
import gable.pipeline.FeatureResult;
import gable.pipeline.ObjectResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Pairs features by where they are: their axes are one line within a tenth of the radius, and their
 * middles are near. Nearest first, each once.
 */
final class Features {

  /** How far axes and middles may lie apart, in radii; a roof moves neither. */
  private static final double APART = 0.1;

  /** Cosine of the angle by which axes may differ: two degrees. */
  private static final double PARALLEL = Math.cos(Math.toRadians(2));

  /** Lengths nearer than this are the same, mm: the step of coordinates with three decimals. */
  private static final double SAME = 2e-3;

  private Features() {}

  /** A possible pair. */
  private record Match(Placed before, Placed after, double apart) {}

  static List<FeaturePair> of(Side before, Side after) {
    List<Placed> first = all(before);
    List<Placed> second = all(after);
    List<Match> matches = new ArrayList<>();
    for (Placed one : first) {
      for (Placed other : second) {
        double apart = apart(one.result().feature(), other.result().feature());
        if (apart <= APART) {
          matches.add(new Match(one, other, apart));
        }
      }
    }
    matches.sort(Comparator.comparingDouble(Match::apart));
    return pairs(first, second, matches);
  }

  private static List<FeaturePair> pairs(
      List<Placed> first, List<Placed> second, List<Match> matches) {
    List<FeaturePair> pairs = new ArrayList<>();
    Set<Placed> taken = new HashSet<>();
    for (Match match : matches) {
      if (!taken.contains(match.before) && !taken.contains(match.after)) {
        taken.add(match.before);
        taken.add(match.after);
        boolean same = isSame(match.before.result().feature(), match.after.result().feature());
        pairs.add(
            new FeaturePair(
                Kind.of(true, true, same), Optional.of(match.before), Optional.of(match.after)));
      }
    }
    for (Placed each : first) {
      if (!taken.contains(each)) {
        pairs.add(new FeaturePair(Kind.REMOVED, Optional.of(each), Optional.empty()));
      }
    }
    // in the order of the first file, then what is new in that of the second
    pairs.sort(Comparator.comparingInt(pair -> first.indexOf(pair.before().orElseThrow())));
    for (Placed each : second) {
      if (!taken.contains(each)) {
        pairs.add(new FeaturePair(Kind.ADDED, Optional.empty(), Optional.of(each)));
      }
    }
    return pairs;
  }

  private static List<Placed> all(Side side) {
    List<Placed> all = new ArrayList<>();
    for (Body body : side.bodies()) {
      List<FeatureResult> features =
          body.result().fold(ObjectResult.Examined::features, skipped -> List.of());
      features.forEach(feature -> all.add(new Placed(feature, body)));
    }
    return all;
  }

  /** How far two features lie apart, in radii; infinite if they are not of one kind and line. */
  private static double apart(Feature one, Feature other) {
    Axis axis = one.axis();
    double turned = Math.abs(axis.direction().dot(other.axis().direction()));
    if (turned < PARALLEL || !one.getClass().equals(other.getClass())) {
      return Double.POSITIVE_INFINITY;
    }
    Vec3 middle = other.axis().origin();
    double aside = axis.distance(middle) / one.radius();
    double along = Math.abs(axis.parameter(middle)) / Math.max(one.radius(), length(one));
    double size = Math.abs(Math.log(other.radius() / one.radius())) / 2;
    return Math.max(Math.max(aside, along), size);
  }

  private static double length(Feature feature) {
    return feature instanceof Bore bore ? bore.length() : 0;
  }

  private static boolean isSame(Feature one, Feature other) {
    boolean alike =
        Math.abs(one.radius() - other.radius()) < SAME
            && Math.abs(length(one) - length(other)) < SAME
            && one.axis().origin().minus(other.axis().origin()).norm() < SAME;
    return alike && shape(one).equals(shape(other));
  }

  private static String shape(Feature feature) {
    return feature instanceof Bore bore
        ? bore.shape() + " " + bore.low().kind() + " " + bore.high().kind()
        : "";
  }
}
