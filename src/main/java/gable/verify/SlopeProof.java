package gable.verify;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.plan.Intent;
import gable.plan.Operation;
import gable.plan.ToolPlane.Role;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Optional;

/**
 * No new face hangs flatter than the slope limit, but for a bridge as wide as is meant, and what is
 * added on the plate.
 *
 * <p>Slack: what the intent allows for the plane, and for each facet twice the stray of its corners
 * from that plane over its least height, which is the most by which it can lean from it (derived).
 */
final class SlopeProof {

  private final Patch patch;
  private final MeshEdit edit;
  private final ToolBody tool;
  private final PlaceProof places;
  private final Intent intent;
  private final Vec3 across;
  private double leastSlope = Math.PI / 2;
  private double bridgeFrom = Double.POSITIVE_INFINITY;
  private double bridgeTo = Double.NEGATIVE_INFINITY;

  SlopeProof(Patch patch, MeshEdit edit, ToolBody tool, PlaceProof places, Intent intent) {
    this.patch = patch;
    this.edit = edit;
    this.tool = tool;
    this.places = places;
    this.intent = intent;
    Vec3 level = Vec3.Z.cross(intent.feature().axis().direction());
    this.across = level.norm() > 0 ? level.unit() : Vec3.X;
  }

  /**
   * Height above the lowest point of the part, in millimetres, up to which a face that is added
   * lies on the plate: a tenth of the thinnest layers in use, 0.05 (practice), so that the first
   * layer has it.
   */
  private static final double ON_PLATE = 0.005;

  /**
   * What is wrong.
   *
   * @param lowest height of the lowest point of the part
   */
  Optional<Unsound> fault(Slack slack, double lowest) {
    for (int f = patch.firstAdded(); f < patch.firstStaying(); f++) {
      int index = patch.id(f);
      if (edit.onNewFace(index) && patch.normal(f).z() < 0 && !liesOn(f, lowest)) {
        Optional<Unsound> fault =
            role(index) == Role.BRIDGE ? spanned(f) : slopeFault(f, places.strayOf(index));
        if (fault.isPresent()) {
          return fault;
        }
      }
    }
    double allowed = Math.min(intent.bridge(), intent.limits().longestBridge());
    double rounding = 2 * (slack.vertex() + tool.widestSnap()); // both ends
    if (bridge() > 0 && bridge() > allowed + rounding) {
      return Fault.of(
          Proof.SLOPE,
          "the bridge spans %.4f mm, more than the %.4f that are meant",
          bridge(),
          allowed);
    }
    return Optional.empty();
  }

  private boolean liesOn(int f, double lowest) {
    double highest = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      highest = Math.max(highest, patch.point(f, k).z());
    }
    return intent.cut().operation() == Operation.ADD && highest <= lowest + ON_PLATE;
  }

  private Role role(int index) {
    return tool.planes().get(places.planeOf(index)).role();
  }

  private Optional<Unsound> spanned(int f) {
    for (int k = 0; k < 3; k++) {
      double u = across.dot(patch.point(f, k));
      bridgeFrom = Math.min(bridgeFrom, u);
      bridgeTo = Math.max(bridgeTo, u);
    }
    return Optional.empty();
  }

  private Optional<Unsound> slopeFault(int f, double stray) {
    double slope = slopeOf(patch.normal(f));
    double lean = Math.asin(Math.min(1, 2 * stray / places.height(f)));
    double planeSlope = slopeOf(tool.normal(places.planeOf(patch.id(f))));
    double least = intent.limits().slope() - intent.slopeSlack();
    leastSlope = Math.min(leastSlope, Math.max(slope, Math.min(planeSlope, slope + lean)));
    if (slope < least - lean || planeSlope < least) {
      return Fault.of(
          Proof.SLOPE,
          "%s hangs at %.4f degrees, flatter than the limit of %.4f",
          patch.name(f),
          Math.toDegrees(Math.min(slope, planeSlope)),
          Math.toDegrees(intent.limits().slope()));
    }
    return Optional.empty();
  }

  /** Angle of a face from the horizontal. */
  private static double slopeOf(Vec3 normal) {
    double level = Math.hypot(normal.x(), normal.y());
    return Math.atan2(level, Math.abs(normal.z()));
  }

  /** Least slope of the faces that hang, up to what rounding does to slivers. */
  double leastSlope() {
    return leastSlope;
  }

  /** Width of the bridge across the feature. */
  double bridge() {
    return bridgeTo > bridgeFrom ? bridgeTo - bridgeFrom : 0;
  }
}
