package gable.reshaper;

import gable.feature.Bore;
import gable.feature.Rim;
import gable.feature.Surroundings;
import gable.feature.Surroundings.Passage;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.plan.ConvexTool;
import gable.plan.Limits;
import gable.plan.ToolPlane;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The tool that chamfers a mouth in a curved face, as of a bore across a bar or in a ball. Lines
 * along the corners of the bore's outline tell where the face is; a leg below each is a corner of
 * the chamfer's foot, and through each two neighbours goes a plane at 45 degrees to the axis.
 *
 * <p>Planes through the sides of a foot that is not flat bound a convex body that has the whole
 * foot on its surface as long as the face curves less than the bore (derived: along a round bore of
 * radius r in a bar of radius R the section at any height has the support function r + h + r² / 4R
 * (1 - 3 cos 2θ), which is that of a convex outline for R above r / 2 and all h here). Where the
 * outline has long straight sides, as under a roof, planes lie as high as they can below the whole
 * foot, so the leg is longer there; how long is measured, and more than twice the leg is refused.
 */
final class CurvedMouth {

  /** Distance from the bore's surface, in millimetres, at which lines run in the solid. */
  private static final double HAIR = 1e-3;

  /** How much longer or shorter than meant the leg may be, as a factor. */
  private static final double FACTOR = 2;

  /** Sine of the slope from which a face that falls towards the bore eases it: 30 degrees. */
  private static final double EASED = 0.5;

  /** Least cosine between the outside and the direction in which the mouth looks. */
  private static final double FACING = 0.2;

  private final Bore bore;
  private final Rim rim;
  private final double leg;
  private final double stagger;
  private final Vec3 outward;
  private final int side;
  private double least = Double.POSITIVE_INFINITY;
  private double most;
  private double air;

  /**
   * A tool, or the reason why there is none.
   *
   * @param tool the tool
   * @param least shortest leg along the axis
   * @param most longest one
   * @param why the reason, empty if there is a tool
   */
  record Answer(Optional<ConvexTool> tool, double least, double most, String why) {}

  /**
   * A mouth.
   *
   * @param side -1 for the low end, 1 for the high one
   * @param leg of the chamfer
   * @param stagger how much deeper every other plane starts
   */
  CurvedMouth(Bore bore, Rim rim, int side, double leg, double stagger) {
    this.bore = bore;
    this.rim = rim;
    this.leg = leg;
    this.stagger = stagger;
    this.side = side;
    this.outward = bore.axis().direction().times(side);
    this.air = leg / 2;
  }

  Answer answer(Surroundings around, Limits limits) {
    double innermost = side < 0 ? -rim.wMax() : rim.wMin();
    if (bore.length() < 3 * leg) {
      return left("the bore is shorter than three times the chamfer");
    }
    Vec3 middle = at(bore.axis().origin(), innermost);
    if (!around.passages(middle, outward, around.size()).isEmpty()) {
      return left("the mouth does not open to the outside");
    }
    String why = "the bore is shorter than three times the chamfer";
    double deepest = leg - bore.length() / 2;
    for (double in = 2 * leg; innermost - in >= deepest; in += bore.radius() / 4) {
      List<Vec3> foot = new ArrayList<>();
      why = feet(around, innermost - in, foot);
      if (why.isEmpty()) {
        return followed(around, limits, foot);
      }
    }
    return left(why);
  }

  /**
   * Finds the corners of the foot from an outline behind the mouth.
   *
   * @param place where along the axis the outline is looked for
   * @param foot where they go
   * @return why there are none, or nothing
   */
  private String feet(Surroundings around, double place, List<Vec3> foot) {
    Plane section = Plane.through(at(bore.axis().origin(), place), outward);
    List<Vec3> outline = BoreOutline.in(section, bore, around);
    if (outline.isEmpty()) {
      return "the outline of the bore behind the mouth is not convex";
    }
    for (Vec3 corner : outline) {
      Optional<Double> height = height(around, corner);
      if (height.isEmpty() || height.get() < 1.5 * leg) {
        return "the face around the mouth cannot be followed, or is eased already";
      }
      Vec3 point = corner.along(outward, height.get() - leg);
      if (foot.isEmpty() || foot.get(foot.size() - 1).distance(point) > HAIR) {
        foot.add(point);
      }
    }
    if (foot.get(0).distance(foot.get(foot.size() - 1)) <= HAIR) {
      foot.remove(foot.size() - 1);
    }
    return "";
  }

  private static Answer left(String why) {
    return new Answer(Optional.empty(), 0, 0, why);
  }

  /** The point level with another, at a place along the axis. */
  private Vec3 at(Vec3 point, double place) {
    double now = point.minus(bore.axis().origin()).dot(outward);
    return point.along(outward, place - now);
  }

  /** How far along the axis from a point of the wall the face of the mouth is. */
  private Optional<Double> height(Surroundings around, Vec3 corner) {
    Vec3 out = BoreOutline.sideways(corner, bore).unit();
    Vec3 inside = corner.along(out, HAIR);
    List<Passage> passages = around.passages(inside, outward, bore.length() + 4 * bore.radius());
    if (passages.isEmpty()
        || !passages.get(0).leaves()
        || passages.get(0).normal().dot(out) < -EASED) {
      return Optional.empty();
    }
    if (passages.size() > 1) {
      air = Math.min(air, (passages.get(1).at() - passages.get(0).at()) / 2);
    }
    return Optional.of(passages.get(0).at());
  }

  private Answer followed(Surroundings around, Limits limits, List<Vec3> foot) {
    List<ToolPlane> planes = new ArrayList<>();
    for (int k = 0; k < foot.size(); k++) {
      planes.add(new ToolPlane(side(foot, k, limits), 0, ToolPlane.Role.FLANK));
    }
    Optional<String> why = obstacle(around, limits, foot, planes);
    if (why.isPresent()) {
      return left(why.get());
    }
    double low = Double.POSITIVE_INFINITY;
    double high = side * (side < 0 ? rim.wMin() : rim.wMax());
    for (Vec3 point : foot) {
      double place = point.minus(bore.axis().origin()).dot(outward);
      low = Math.min(low, place);
      high = Math.max(high, place + leg);
    }
    Vec3 origin = bore.axis().origin();
    planes.add(
        new ToolPlane(Plane.through(at(origin, high + air), outward), 0, ToolPlane.Role.END));
    planes.add(
        new ToolPlane(
            Plane.through(at(origin, low - leg / 2), outward.times(-1)), 0, ToolPlane.Role.BASE));
    ConvexTool tool = ConvexTool.of(planes, at(origin, low), 20 * (bore.radius() + high - low));
    return new Answer(Optional.of(tool), least, most, "");
  }

  /**
   * The plane over one side of the outline: at 45 degrees, below all corners of the foot and
   * otherwise as high as can be over the middle of the side. On a face that is flat or curves less
   * than the bore it goes through both ends of the side.
   *
   * <p>Seen along the side, each corner counts at its height and as much higher as it is farther in
   * from the side, since the plane falls by that; so the plane is a side of the lower hull.
   */
  private Plane side(List<Vec3> foot, int k, Limits limits) {
    Vec3 from = foot.get(k);
    Vec3 to = foot.get((k + 1) % foot.size());
    Vec3 way = to.minus(from);
    Vec3 level = way.minus(outward.times(way.dot(outward)));
    Vec3 along = level.unit();
    Vec3 out = along.cross(outward).unit();
    out = out.dot(BoreOutline.sideways(from, bore)) < 0 ? out.times(-1) : out;
    double middle = level.norm() / 2;
    List<double[]> seen = new ArrayList<>();
    for (Vec3 corner : foot) {
      Vec3 there = corner.minus(from);
      double height = there.dot(outward) + Math.max(0, -there.dot(out));
      seen.add(new double[] {there.dot(along), height});
    }
    double[] hull = under(seen, middle);
    Vec3 rising = along.plus(outward.times(hull[1])).unit();
    Vec3 normal = MouthTool.leaning(out, out.cross(rising).unit(), outward, limits.slope());
    double deeper = stagger * MouthTool.turn(k, foot.size());
    return Plane.through(from.along(outward, hull[0] - deeper), normal);
  }

  /**
   * The side of the lower hull of some points over a place.
   *
   * @return its height at 0 and its rise
   */
  private static double[] under(List<double[]> points, double place) {
    double[] best = {Double.NEGATIVE_INFINITY, 0};
    double highest = Double.NEGATIVE_INFINITY;
    for (double[] a : points) {
      for (double[] b : points) {
        if (a[0] < place && b[0] > place) {
          double rise = (b[1] - a[1]) / (b[0] - a[0]);
          double start = a[1] - rise * a[0];
          boolean under = points.stream().allMatch(p -> p[1] - start - rise * p[0] > -SAME);
          if (under && start + rise * place > highest) {
            highest = start + rise * place;
            best = new double[] {start, rise};
          }
        }
      }
    }
    return best;
  }

  /** Heights that differ by less than this, in millimetres, are one: rounding of coordinates. */
  private static final double SAME = 1e-5;

  /** Why the chamfer cannot be cut so; measures its leg on the way. */
  private Optional<String> obstacle(
      Surroundings around, Limits limits, List<Vec3> foot, List<ToolPlane> planes) {
    for (int k = 0; k < foot.size(); k++) {
      Vec3 from = foot.get(k);
      Vec3 way = foot.get((k + 1) % foot.size()).minus(from);
      for (double share : new double[] {0, 0.25, 0.5, 0.75}) {
        Vec3 point = from.along(way, share);
        Optional<Double> height = height(around, point);
        if (height.isEmpty()) {
          return Optional.of("the face around the mouth cannot be followed");
        }
        double inside = 0;
        for (ToolPlane plane : planes) {
          double beyond = plane.plane().signedDistance(point);
          inside = Math.max(inside, beyond / -plane.plane().normal().dot(outward));
        }
        least = Math.min(least, height.get() - inside);
        most = Math.max(most, height.get() - inside);
        Optional<String> edge = beside(around, limits, point, planes.get(k).plane().normal());
        if (edge.isPresent()) {
          return edge;
        }
      }
    }
    return least < leg / FACTOR || most > leg * FACTOR
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "the face curves so much that the chamfer would be %.2f to %.2f mm deep",
                least,
                most))
        : Optional.empty();
  }

  /** Whether the chamfer's upper edge lies in the face of the mouth, with a wall behind it. */
  private Optional<String> beside(Surroundings around, Limits limits, Vec3 point, Vec3 normal) {
    Vec3 out = BoreOutline.sideways(point, bore).unit();
    Vec3 upwards = outward.minus(normal.times(outward.dot(normal))).unit();
    Vec3 start = point.along(out, HAIR);
    List<Passage> passages = around.passages(start, upwards, 4 * leg);
    boolean onFace =
        !passages.isEmpty()
            && passages.get(0).leaves()
            && passages.get(0).at() * Math.abs(upwards.dot(outward)) <= FACTOR * leg
            && passages.get(0).normal().dot(outward) >= FACING;
    if (!onFace) {
      return Optional.of("the chamfer would break an edge beside the mouth");
    }
    for (double share : new double[] {0.1, 0.5, 0.9}) {
      Vec3 behind = start.along(upwards, share * passages.get(0).at()).along(normal, HAIR);
      if (!around.passages(behind, normal, limits.leastRoof()).isEmpty()
          || around.winding(behind) < 1) {
        return Optional.of(
            String.format(
                Locale.ROOT,
                "beside the chamfer less than the least wall of %.2f mm is left",
                limits.leastRoof()));
      }
    }
    return Optional.empty();
  }
}
