package gable.verify;

import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.WorkMesh;
import gable.plan.Operation;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The volume changes by what solid and tool have in common, found by two methods.
 *
 * <p>The change of the whole is the sum of signed tetrahedra over facets that come, less that over
 * facets that go. What the solid fills of the tool T is found, before and after, from a point p
 * inside T: with w the winding number at p,
 *
 * <pre>  V(T ∩ solid) = w V(T) − Σ ± V(part of T that the facet hides from p),</pre>
 *
 * since along the way from p to any x in T the winding number drops by one at each facet that is
 * passed outwards (derived). Only facets that meet T count. w before comes from a ray, its change
 * from the solid angles of the facets that go and come.
 *
 * <p>Proved is that both changes agree, so that nothing outside the tool changes, and, where
 * nothing strange stays inside, that nothing is left in the tool, or no gap where it is added.
 *
 * <p>Tolerance: a facet that lies up to d from where it is meant shifts at most its area times d;
 * both methods see such shifts, so twice the sum; and rounding of the sums themselves.
 */
final class VolumeProof {

  /** Relative rounding error of the sums: some hundred terms of a few dozen roundings each. */
  private static final double ROUNDING = 1e-12;

  private final Patch patch;
  private final ToolBody tool;
  private final ConvexClip work = new ConvexClip();
  private final double[] depths;
  private double change;
  private double solidAngle;
  private double hiddenGone;
  private double hiddenCome;
  private double hiddenStaying;
  private double shift;
  private double size;
  private double before;
  private double after;

  VolumeProof(Patch patch, ToolBody tool, PlaceProof places) {
    this.patch = patch;
    this.tool = tool;
    this.depths = new double[tool.planes().size()];
    for (int f = 0; f < patch.facetCount(); f++) {
      add(f, places);
    }
  }

  private void add(int f, PlaceProof places) {
    Vec3 a = patch.point(f, 0).minus(tool.apex());
    Vec3 b = patch.point(f, 1).minus(tool.apex());
    Vec3 c = patch.point(f, 2).minus(tool.apex());
    double hidden = tool.hiddenBehind(a, b, c, work);
    if (patch.isStaying(f)) {
      hiddenStaying += hidden;
      shift += hidden == 0 ? 0 : snappedShift(a, b, c);
      return;
    }
    double tetrahedron = a.dot(b.cross(c)) / 6;
    size += Math.abs(tetrahedron);
    double angle = solidAngle(a, b, c);
    if (patch.isAdded(f)) {
      change += tetrahedron;
      solidAngle += angle;
      hiddenCome += hidden;
      shift += patch.normal(f).norm() / 2 * places.strayOf(patch.id(f));
    } else {
      change -= tetrahedron;
      solidAngle -= angle;
      hiddenGone += hidden;
      shift += hidden == 0 ? 0 : snappedShift(a, b, c);
    }
  }

  /**
   * Area times depth of the part of a facet in the tool that counts as lying in one of its planes.
   */
  private double snappedShift(Vec3 a, Vec3 b, Vec3 c) {
    tool.clipInto(work, a, b, c);
    tool.depths(work, depths);
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < depths.length; k++) {
      if (depths[k] <= tool.planes().get(k).snap()) {
        least = Math.min(least, Math.max(0, depths[k]));
      }
    }
    return least == Double.POSITIVE_INFINITY ? 0 : least * work.area();
  }

  /**
   * Solid angle of a facet, positive if its inside faces the apex (A. van Oosterom and J. Strackee,
   * The Solid Angle of a Plane Triangle, IEEE Transactions on Biomedical Engineering 30, 1983).
   */
  private static double solidAngle(Vec3 a, Vec3 b, Vec3 c) {
    double la = a.norm();
    double lb = b.norm();
    double lc = c.norm();
    double sine = a.dot(b.cross(c));
    double cosine = la * lb * lc + a.dot(b) * lc + b.dot(c) * la + c.dot(a) * lb;
    return 2 * Math.atan2(sine, cosine);
  }

  /** True if the apex lies on the surface, so that another has to be tried. */
  boolean apexIsBad() {
    double turns = solidAngle / (4 * Math.PI);
    return !(Math.abs(turns - Math.rint(turns)) < 1e-3); // far above rounding, far below one
  }

  Optional<Unsound> fault(WorkMesh mesh, Box3 box, Operation operation, boolean leavesSomething) {
    OptionalInt winding = Ray.winding(mesh, box, tool.apex());
    if (apexIsBad() || winding.isEmpty()) {
      return Fault.of(Proof.VOLUME, "the facets that go and come do not fit together");
    }
    int now = winding.getAsInt() + (int) Math.rint(solidAngle / (4 * Math.PI));
    before = winding.getAsInt() * tool.volume() - hiddenGone - hiddenStaying;
    after = now * tool.volume() - hiddenCome - hiddenStaying;
    if (!(Math.abs(change - (after - before)) <= tolerance())) {
      return Fault.of(
          Proof.VOLUME,
          "the volume changes by %.9f mm3, inside the tool by %.9f (may differ by %.1e)",
          change,
          after - before,
          tolerance());
    }
    double meant = operation == Operation.SUBTRACT ? 0 : tool.volume();
    if (!leavesSomething && !(Math.abs(after - meant) <= tolerance())) {
      return Fault.of(
          Proof.VOLUME,
          "of the tool %.9f mm3 would be filled, not %.9f (may differ by %.1e)",
          after,
          meant,
          tolerance());
    }
    return Optional.empty();
  }

  double tolerance() {
    return 2 * shift + ROUNDING * (size + tool.volume());
  }

  /** Change of the volume of the whole. */
  double change() {
    return change;
  }

  /** Change of what the solid fills of the tool. */
  double changeInTool() {
    return after - before;
  }
}
