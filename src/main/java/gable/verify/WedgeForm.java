package gable.verify;

import gable.feature.Bore;
import gable.feature.Feature;
import gable.feature.Pin;
import gable.feature.Rim;
import gable.feature.Ruling;
import gable.geom.ConvexSolid;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.plan.Intent;
import gable.plan.Operation;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where a bore or a pin is a prism over a convex polygon that starts at a flat face, and nothing
 * else is in the way, the change is known from planes alone: with T the tool, H the half-space on
 * the feature's side of the face and P the endless prism,
 *
 * <pre>  taken from a bore, or added to a pin:  V(T ∩ H) − V(T ∩ H ∩ P).</pre>
 *
 * <p>All three are convex, so each volume is a sum of pyramids. Tolerance on top of that of the
 * volume: the stray of rulings and face, times the surface of the bodies.
 */
final class WedgeForm {

  /** Share of the surface by which rounding may leave it open; a lost face leaves far more. */
  private static final double CLOSED = 1e-9;

  private final Patch patch;
  private final ToolBody tool;
  private final Slack slack;
  private final Prism prism;

  /**
   * A feature as a prism.
   *
   * @param corners of its polygon, in turn
   * @param along direction of its axis
   * @param faces planes in which it starts, normals away from its side
   * @param closed a plane that ends it, beyond which the form says nothing
   * @param stray how far its vertices are off
   */
  private record Prism(
      List<Vec3> corners, Vec3 along, List<Plane> faces, List<Plane> closed, double stray) {}

  private WedgeForm(Patch patch, ToolBody tool, Slack slack, Prism prism) {
    this.patch = patch;
    this.tool = tool;
    this.slack = slack;
    this.prism = prism;
  }

  /** Compares a change of volume with the closed form where there is one. */
  static Optional<Unsound> fault(
      Patch patch, Intent intent, ToolBody tool, Slack slack, VolumeProof volumes) {
    boolean adding = intent.cut().operation() == Operation.ADD;
    Optional<Prism> prism = prism(intent.feature(), adding);
    if (prism.isEmpty()) {
      return Optional.empty();
    }
    var form = new WedgeForm(patch, tool, slack, prism.get());
    return form.applies(intent.feature().wall())
        ? form.compared(adding ? 1 : -1, volumes)
        : Optional.empty();
  }

  private static Optional<Prism> prism(Feature feature, boolean adding) {
    if (adding && feature instanceof Pin pin && pin.rootPlane().isPresent()) {
      return Optional.of(
          new Prism(
              pin.outline(),
              pin.axis().direction(),
              List.of(pin.rootPlane().get()),
              pin.tipPlane().stream().toList(),
              pin.outlineDeviation() + pin.rootDeviation()));
    }
    return !adding && feature instanceof Bore bore ? prism(bore) : Optional.empty();
  }

  private static Optional<Prism> prism(Bore bore) {
    if (bore.low().plane().isEmpty() || bore.high().plane().isEmpty()) {
      return Optional.empty();
    }
    Vec3 w = bore.axis().direction();
    Vec3 up = Vec3.Z.minus(w.times(w.z()));
    if (!(up.norm() > 1e-6)) { // below, the frame of the section is not the one used here
      return Optional.empty();
    }
    Vec3 u = up.unit().cross(w);
    List<Vec3> corners = new ArrayList<>();
    for (Ruling ruling : bore.section().rulings()) {
      corners.add(bore.axis().origin().along(u, ruling.u()).along(up.unit(), ruling.v()));
    }
    List<Plane> faces = new ArrayList<>();
    List<Plane> closed = new ArrayList<>();
    for (Rim rim : List.of(bore.low(), bore.high())) {
      boolean open =
          switch (rim.kind()) {
            case OPEN_SQUARE, OPEN_SLANTED -> true;
            default -> false;
          };
      (open ? faces : closed).add(rim.plane().orElseThrow());
    }
    double stray =
        bore.section().deviation() + bore.low().planeDeviation() + bore.high().planeDeviation();
    return Optional.of(new Prism(corners, w, faces, closed, stray));
  }

  /** True if only the wall and the faces change, the polygon is convex, and no end is reached. */
  private boolean applies(int[] wall) {
    if (prism.corners.size() < 3 || prism.faces.isEmpty() || !convex()) {
      return false;
    }
    for (int f = 0; f < patch.firstAdded(); f++) {
      boolean known = Arrays.binarySearch(wall, patch.id(f)) >= 0;
      for (Plane face : prism.faces) {
        known |= inPlane(f, face);
      }
      if (!known) {
        return false;
      }
    }
    for (int f = patch.firstAdded(); f < patch.firstStaying(); f++) {
      for (int k = 0; k < 3; k++) {
        Vec3 point = patch.point(f, k);
        if (prism.closed.stream().anyMatch(end -> end.signedDistance(point) > 0)) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean inPlane(int f, Plane plane) {
    for (int k = 0; k < 3; k++) {
      if (Math.abs(plane.signedDistance(patch.point(f, k))) > 2 * prism.stray + slack.grid()) {
        return false;
      }
    }
    return true;
  }

  private boolean convex() {
    return sides().stream()
        .allMatch(
            side ->
                prism.corners.stream()
                    .allMatch(p -> side.signedDistance(p) <= prism.stray + slack.grid()));
  }

  /** The planes of the prism, normals outwards. */
  private List<Plane> sides() {
    int count = prism.corners.size();
    double turned = 0;
    for (int k = 0; k < count; k++) {
      Vec3 a = prism.corners.get(k);
      Vec3 b = prism.corners.get((k + 1) % count);
      turned += a.minus(prism.corners.get(0)).cross(b.minus(a)).dot(prism.along);
    }
    List<Plane> sides = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      Vec3 way = prism.corners.get((k + 1) % count).minus(prism.corners.get(k));
      Vec3 out = way.cross(prism.along).times(Math.signum(turned)).unit();
      sides.add(Plane.through(prism.corners.get(k), out));
    }
    return sides;
  }

  private Optional<Unsound> compared(int sense, VolumeProof volumes) {
    List<Plane> planes = new ArrayList<>();
    tool.planes().forEach(each -> planes.add(each.plane()));
    planes.addAll(prism.faces);
    ConvexSolid whole = ConvexSolid.of(planes, tool.apex(), reach());
    planes.addAll(sides());
    ConvexSolid inside = ConvexSolid.of(planes, tool.apex(), reach());
    if (!closed(whole) || !closed(inside)) {
      return Optional.empty();
    }
    double meant = sense * (whole.volume() - inside.volume());
    double stray = 2 * (prism.stray + tool.widestSnap() + slack.grid());
    double allowed = volumes.tolerance() + (surface(whole) + surface(inside)) * stray;
    if (Math.abs(volumes.change() - meant) <= allowed) {
      return Optional.empty();
    }
    return Fault.of(
        Proof.VOLUME,
        "the volume changes by %.9f mm3; by the planes of tool and feature by %.9f (may differ by"
            + " %.1e)",
        volumes.change(),
        meant,
        allowed);
  }

  /** Above the size of the tool from its apex. */
  private double reach() {
    return 2 * tool.box().diagonal();
  }

  /**
   * True if the faces of a body close it: their areas as vectors add up to nothing. Where a plane
   * of the tool runs along an edge of the prism, as that of a roof does, more than three planes
   * meet in a point but for rounding, and a face may get lost.
   */
  private static boolean closed(ConvexSolid solid) {
    Vec3 sum = Vec3.ZERO;
    for (int plane = 0; plane < solid.planes().size(); plane++) {
      sum = sum.plus(area(solid.face(plane)));
    }
    return sum.norm() <= CLOSED * surface(solid);
  }

  private static double surface(ConvexSolid solid) {
    double sum = 0;
    for (int plane = 0; plane < solid.planes().size(); plane++) {
      sum += area(solid.face(plane)).norm();
    }
    return sum;
  }

  /** Area of a face as a vector along its normal. */
  private static Vec3 area(List<Vec3> face) {
    Vec3 twice = Vec3.ZERO;
    for (int k = 2; k < face.size(); k++) {
      Vec3 a = face.get(k - 1).minus(face.get(0));
      twice = twice.plus(a.cross(face.get(k).minus(face.get(0))));
    }
    return twice.times(0.5);
  }
}
