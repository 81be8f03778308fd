package gable.feature;

import java.util.Arrays;
import java.util.Optional;

/**
 * Unrolls a hole by a screw motion and looks for the wave of a thread: the radius must depend on w
 * − rise × θ alone, come back after each pitch, and swing as deep as threads do.
 *
 * <p>The motion's rise needs to be about right. It is made exact by how the phase of the wave
 * drifts from turn to turn, so that a long fine thread does not blur. Seven walks over the facets
 * at most.
 *
 * <p>Bounds are proportions of standard threads with room to either side: pitch over diameter is
 * 0.013 (M300 × 4) to 0.25 (M1 × 0.25) in ISO 261, 0.3 in ISO 2904; depth over pitch is 0.54 for an
 * inside thread of ISO 68-1, 0.5 in ISO 2904, 0.64 in ISO 7-1, 0.87 where the sharp triangle is not
 * cut off, and about 0.3 on lamps and bottles (from memory).
 */
final class ThreadWave {

  private static final double LEAST_PITCH = 0.008;
  private static final double MOST_PITCH = 0.5;
  private static final double LEAST_DEPTH = 0.15;
  private static final double MOST_DEPTH = 1.2;

  /** A pipe thread narrows by 1:32 on the radius (ISO 7-1); four times that is a cone. */
  private static final double MOST_TAPER = 0.125;

  /** Steeper than 45 degrees the thread would be a gear or a rifling, which no nut goes along. */
  private static final double MOST_SLOPE = 1;

  /** With more starts than this nothing is screwed that is known. */
  private static final int MOST_STARTS = 8;

  /** Twice as many turns as a hole has that is ten diameters deep, with the finest pitch. */
  private static final double MOST_TURNS = 20 / LEAST_PITCH;

  /** The wave must be seen to come back; one turn of it with ragged ends reaches over 2 pitches. */
  private static final double LEAST_PITCHES = 2.5;

  private static final int BINS = 32;

  /** Keeps lines of symmetry off the edges of bins where a point is in one bin. */
  private static final double ASIDE = 0.271828 / BINS;

  /** Share of a lead that a wall must show: a coil with gaps between its turns shows less. */
  private static final double LEAST_SHOWN = 0.9;

  /** Share of a pitch that may lie at the crests: more is a bore with a groove. */
  private static final double MOST_CREST = 0.75;

  /** Share of the depth within which a facet counts as crest. */
  private static final double AT_CREST = 0.1;

  /** Share of the radius's variance that the phase explains; other surfaces that meet show none. */
  private static final double LEAST_EXPLAINED = 0.75;

  /** Share of the strongest wave from which the longest one is the wave itself. */
  private static final double FUNDAMENTAL = 0.7;

  private final Unrolled hole;
  private final Cylinder frame;
  private double rise;
  private double low = Double.POSITIVE_INFINITY;
  private double high = Double.NEGATIVE_INFINITY;
  private double middle;
  private double mean;
  private double slope;
  private int starts;

  /** Phase at which the wave has its first crest or root, so that no frame shows in the result. */
  private double anchor;

  private ThreadWave(Unrolled hole, Cylinder frame, double rise) {
    this.hole = hole;
    this.frame = frame;
    this.rise = rise;
  }

  /**
   * A thread.
   *
   * @param frame its axis, with the radius of its crests
   * @param pitch from crest to crest along the axis
   * @param low smallest w of its wall
   * @param high largest w of its wall
   * @param stray root mean square of how far radii are from those of their phase
   */
  record Found(Cylinder frame, double pitch, double low, double high, double stray) {}

  /** The thread of a set of facets, if the motion shows one. */
  static Optional<Found> find(Surface surface, IndexSet facets, ScrewMotion motion) {
    Cylinder frame = Cylinder.about(motion.origin(), motion.direction(), 1);
    return new ThreadWave(new Unrolled(surface, facets, frame), frame, motion.rise()).find();
  }

  private Optional<Found> find() {
    span();
    trend();
    double turns = (high - low) / (Angles.TURN * Math.abs(rise));
    if (!(Math.abs(slope) <= MOST_TAPER && Math.abs(rise) <= MOST_SLOPE * mean)
        || !(turns > 0.8 && turns < MOST_TURNS)) {
      return Optional.empty();
    }
    tune((int) Math.max(2, Math.rint(turns)));
    double lead = Angles.TURN * Math.abs(rise);
    double pitch = lead / starts;
    double ratio = pitch / (2 * mean);
    boolean proportioned = ratio >= LEAST_PITCH && ratio <= MOST_PITCH;
    boolean comesBack = high - low >= Math.max(LEAST_PITCHES * pitch, lead);
    return proportioned && comesBack ? judged(pitch) : Optional.empty();
  }

  private void span() {
    for (int k = 0; k < hole.size(); k++) {
      hole.measure(hole.facet(k));
      for (int c = 0; c < 3; c++) {
        low = Math.min(low, hole.w(c));
        high = Math.max(high, hole.w(c));
      }
    }
  }

  /** Mean radius and its trend along the axis. */
  private void trend() {
    double[] sums = new double[5];
    hole.forEach(
        rise,
        (angle, w, radius, weight) -> {
          sums[0] += weight;
          sums[1] += weight * w;
          sums[2] += weight * radius;
          sums[3] += weight * w * w;
          sums[4] += weight * w * radius;
        });
    middle = sums[1] / sums[0];
    mean = sums[2] / sums[0];
    double square = sums[3] / sums[0] - middle * middle;
    slope = square > 0 ? (sums[4] / sums[0] - middle * mean) / square : 0;
  }

  /** How far a radius is above the mean there. */
  private double swing(double w, double radius) {
    return radius - mean - slope * (w - middle);
  }

  /** Finds the number of starts, and the rise at which the phase does not drift. */
  private void tune(int pieces) {
    double[][] waves = waves(pieces);
    double[] power = new double[MOST_STARTS + 1];
    for (int z = 1; z <= MOST_STARTS; z++) {
      for (int piece = 0; piece < pieces; piece++) {
        power[z] += Math.hypot(waves[z][2 * piece], waves[z][2 * piece + 1]);
      }
    }
    double most = Arrays.stream(power).max().orElse(0);
    starts = 1;
    while (power[starts] < FUNDAMENTAL * most) {
      starts++;
    }
    straighten(waves[starts], pieces);
    straighten(waves(pieces)[starts], pieces);
    double[] wave = waves(pieces)[starts];
    double re = 0;
    double im = 0;
    for (int k = 0; k < 2 * pieces; k += 2) {
      re += wave[k];
      im += wave[k + 1];
    }
    anchor = -Math.atan2(im, re) * rise / starts;
  }

  private void straighten(double[] wave, int pieces) {
    double number = starts / rise + drift(wave, pieces) / ((high - low) / pieces);
    if (number * rise > 0) {
      rise = starts / number;
    }
  }

  /** Angle by which the wave gains from one piece of the length to the next. */
  private static double drift(double[] wave, int pieces) {
    double re = 0;
    double im = 0;
    for (int k = 2; k < 2 * pieces; k += 2) {
      re += wave[k] * wave[k - 2] + wave[k + 1] * wave[k - 1];
      im += wave[k + 1] * wave[k - 2] - wave[k] * wave[k - 1];
    }
    return Math.atan2(im, re);
  }

  /** For each number of starts and each piece of the length the wave: real part, imaginary part. */
  private double[][] waves(int pieces) {
    double[][] waves = new double[MOST_STARTS + 1][2 * pieces];
    hole.forEach(
        rise,
        (angle, w, radius, weight) -> {
          double at = angle - w / rise;
          double cosine = Math.cos(at);
          double sine = Math.sin(at);
          int piece = 2 * (int) Math.min(pieces - 1.0, (w - low) / (high - low) * pieces);
          double re = weight * swing(w, radius);
          double im = 0;
          for (int z = 1; z <= MOST_STARTS; z++) {
            double turned = re * cosine - im * sine;
            im = re * sine + im * cosine;
            re = turned;
            waves[z][piece] += re;
            waves[z][piece + 1] += im;
          }
        });
    return waves;
  }

  /** Holds the wave against what threads are. */
  private Optional<Found> judged(double pitch) {
    double[] weights = new double[BINS];
    double[] swings = new double[BINS];
    double[] squares = new double[1];
    hole.forEach(
        rise,
        (angle, w, radius, weight) -> {
          double phase = phase(angle, w, pitch);
          double at = (phase - Math.floor(phase)) * BINS;
          int bin = (int) at % BINS;
          double swing = swing(w, radius);
          // shared by two bins, so that nothing hangs on which side of an edge a point falls
          share(weights, bin, at - bin, weight);
          share(swings, bin, at - bin, weight * swing);
          squares[0] += weight * swing * swing;
        });
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    double shaped = 0;
    for (int bin = 0; bin < BINS; bin++) {
      if (weights[bin] > 0) {
        double value = swings[bin] / weights[bin];
        shaped += weights[bin] * value * value;
        least = Math.min(least, value);
        most = Math.max(most, value);
      }
    }
    double depth = most - least;
    boolean isThread =
        depth > LEAST_DEPTH * pitch
            && depth < MOST_DEPTH * pitch
            && shaped >= LEAST_EXPLAINED * squares[0]
            && shown(pitch * starts) >= LEAST_SHOWN
            && atCrest(pitch, least + AT_CREST * depth, weights) <= MOST_CREST;
    double all = Arrays.stream(weights).sum();
    double stray = Math.sqrt(Math.max(0, squares[0] - shaped) / all);
    var at = new Cylinder(frame.origin(), frame.u(), frame.v(), frame.w(), mean + least);
    return isThread ? Optional.of(new Found(at, pitch, low, high, stray)) : Optional.empty();
  }

  private static void share(double[] bins, int bin, double part, double value) {
    bins[bin] += (1 - part) * value;
    bins[(bin + 1) % BINS] += part * value;
  }

  /** Phase in bins, from 0 to less than their number. */
  private int bin(double angle, double w, double pitch) {
    double phase = phase(angle, w, pitch) + ASIDE;
    return (int) ((phase - Math.floor(phase)) * BINS) % BINS;
  }

  private double phase(double angle, double w, double pitch) {
    return (w - rise * angle - anchor) / pitch;
  }

  /** Share of a pitch over which most of the wall swings out no farther than a limit. */
  private double atCrest(double pitch, double limit, double[] weights) {
    double[] crest = new double[BINS];
    hole.forEach(
        rise,
        (angle, w, radius, weight) ->
            crest[bin(angle, w, pitch)] += swing(w, radius) <= limit ? weight : 0);
    int count = 0;
    for (int bin = 0; bin < BINS; bin++) {
      count += crest[bin] > weights[bin] / 2 ? 1 : 0;
    }
    return (double) count / BINS;
  }

  /** Share of a lead over which facets lie. */
  private double shown(double lead) {
    boolean[] seen = new boolean[BINS * starts];
    for (int k = 0; k < hole.size(); k++) {
      hole.measure(hole.facet(k));
      double a = phase(hole.angle(0), hole.w(0), lead);
      double b = phase(hole.angle(1), hole.w(1), lead);
      double c = phase(hole.angle(2), hole.w(2), lead);
      double first = Math.ceil((Math.min(a, Math.min(b, c)) + ASIDE) * seen.length - 0.5);
      double last = Math.ceil((Math.max(a, Math.max(b, c)) + ASIDE) * seen.length - 0.5);
      for (double bin = first; bin < Math.min(last, first + seen.length); bin++) {
        seen[Math.floorMod((int) bin, seen.length)] = true;
      }
    }
    int count = 0;
    for (boolean one : seen) {
      count += one ? 1 : 0;
    }
    return (double) count / seen.length;
  }
}
