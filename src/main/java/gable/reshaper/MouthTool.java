package gable.reshaper;

import gable.feature.Bore;
import gable.feature.Rim;
import gable.feature.Surroundings;
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
 * The tool that chamfers a flat mouth. It is bounded by the mouth's plane moved a leg into the
 * bore, where its section is the outline that the bore has there; by one plane at 45 degrees to the
 * axis through each side of that outline; and by a plane in the air before the mouth. The planes
 * through the sides of a convex outline bound a convex body, whatever way the mouth leans.
 */
final class MouthTool {

  private final Bore bore;
  private final Rim rim;
  private final int side;
  private final double leg;

  /**
   * A tool, or the reason why there is none.
   *
   * @param tool the tool
   * @param why the reason, empty if there is a tool
   */
  record Answer(Optional<ConvexTool> tool, String why) {}

  MouthTool(Bore bore, Rim rim, int side, double leg) {
    this.bore = bore;
    this.rim = rim;
    this.side = side;
    this.leg = leg;
  }

  Answer answer(Surroundings around, Limits limits) {
    if (bore.length() < 3 * leg) {
      return left("the bore is shorter than three times the chamfer");
    }
    Plane mouth = rim.plane().orElseThrow();
    Vec3 outward = bore.axis().direction().times(side);
    Plane floor = mouth.moved(-leg * mouth.normal().dot(outward));
    List<Vec3> outline = BoreOutline.in(floor, bore, around);
    if (outline.isEmpty()) {
      return left("the outline of the bore behind the mouth is not convex");
    }
    double wall = limits.leastRoof();
    for (Vec3 corner : outline) {
      Vec3 out = BoreOutline.sideways(corner, bore).unit();
      Vec3 beside = onto(mouth, corner.along(out, leg + wall), outward);
      if (around.winding(beside.along(outward, -leg / 2)) < 1) {
        return left(
            String.format(
                Locale.ROOT,
                "beside the chamfer less than the least wall of %.2f mm is left",
                wall));
      }
    }
    return new Answer(Optional.of(tool(outline, mouth, floor, limits.slope())), "");
  }

  private static Answer left(String why) {
    return new Answer(Optional.empty(), why);
  }

  /**
   * How much deeper every other plane starts, in millimetres. Two planes through neighbouring sides
   * would meet a ruling of the wall in one point, and rounding would decide which comes first; a
   * step above the merging of points, 1e-4, lets them meet it one after the other.
   */
  static final double STAGGER = 0.002;

  /**
   * Normal of a chamfer plane through a side: 45 degrees between the wall and the mouth, and more
   * towards the mouth where the plane would hang flatter than the slope limit, as beside the crown
   * of a mouth that is not square.
   *
   * @param out normal of the wall at the side
   * @param across square to the side and to {@code out}
   */
  static Vec3 leaning(Vec3 out, Vec3 across, Vec3 outward, double slope) {
    Vec3 inward = across.dot(outward) > 0 ? across.times(-1) : across;
    double angle = Math.PI / 4;
    Vec3 normal = at(angle, out, inward);
    while (normal.z() > Math.cos(slope) + LEVEL && angle < STEEPEST) {
      angle += STEP;
      normal = at(angle, out, inward);
    }
    return normal;
  }

  private static Vec3 at(double angle, Vec3 out, Vec3 inward) {
    return out.times(Math.cos(angle)).plus(inward.times(Math.sin(angle))).unit();
  }

  /** Steps in which a chamfer is turned towards the mouth, and how far at most, in radians. */
  private static final double STEP = Math.toRadians(0.25);

  private static final double STEEPEST = Math.toRadians(70);

  /** Rounding of a direction. */
  private static final double LEVEL = 1e-12;

  static int turn(int k, int count) {
    return k == count - 1 && count % 2 == 1 ? 2 : k % 2;
  }

  private ConvexTool tool(List<Vec3> outline, Plane mouth, Plane floor, double slope) {
    Vec3 outward = bore.axis().direction().times(side);
    List<ToolPlane> planes = new ArrayList<>();
    for (int k = 0; k < outline.size(); k++) {
      Vec3 from = outline.get(k);
      Vec3 along = outline.get((k + 1) % outline.size()).minus(from);
      Vec3 out = along.cross(outward).unit();
      out = out.dot(BoreOutline.sideways(from, bore)) < 0 ? out.times(-1) : out;
      Vec3 normal = leaning(out, out.cross(along).unit(), outward, slope);
      Vec3 start = from.along(outward, -STAGGER * turn(k, outline.size()));
      planes.add(new ToolPlane(Plane.through(start, normal), 0, ToolPlane.Role.FLANK));
    }
    double air = leg / 2 * mouth.normal().dot(outward);
    planes.add(new ToolPlane(mouth.moved(air), 0, ToolPlane.Role.END));
    planes.add(new ToolPlane(floor.moved(-air).flipped(), 0, ToolPlane.Role.BASE));
    Vec3 near = onto(mouth, bore.axis().origin(), outward).along(outward, -leg / 2);
    return ConvexTool.of(planes, near, 20 * bore.radius());
  }

  /** Where the line through a point along the axis meets a plane. */
  private static Vec3 onto(Plane plane, Vec3 point, Vec3 direction) {
    return point.along(direction, -plane.signedDistance(point) / plane.normal().dot(direction));
  }
}
