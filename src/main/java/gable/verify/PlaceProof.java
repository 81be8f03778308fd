package gable.verify;

import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.plan.Operation;
import gable.plan.ToolPlane;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Optional;

/**
 * New facets are where they belong: one that is cut from an old facet lies in its plane and within
 * its outline, faces as it does and keeps out of the tool's way; one on a new face lies in a plane
 * of the tool, within the tool, and faces into the void that the cut makes (away from the material
 * that it adds, whose base is meant to be inside the solid and may not show). So nothing outside
 * the tool changes.
 */
final class PlaceProof {

  private final Patch patch;
  private final MeshEdit edit;
  private final ToolBody tool;
  private final Slack slack;
  private final int sense;
  private final int[] planeOf;
  private final double[] strayOf;

  PlaceProof(Patch patch, MeshEdit edit, ToolBody tool, Operation operation, Slack slack) {
    this.patch = patch;
    this.edit = edit;
    this.tool = tool;
    this.slack = slack;
    this.sense = operation == Operation.SUBTRACT ? -1 : 1;
    this.planeOf = new int[edit.facetCount()];
    this.strayOf = new double[edit.facetCount()];
  }

  Optional<Unsound> fault() {
    for (int f = patch.firstAdded(); f < patch.firstStaying(); f++) {
      Optional<Unsound> fault = edit.onNewFace(patch.id(f)) ? newFaceFault(f) : cutFacetFault(f);
      if (fault.isPresent()) {
        return fault;
      }
    }
    return Optional.empty();
  }

  /** Plane of the tool in which the {@code index}-th new facet lies; −1 if on an old face. */
  int planeOf(int index) {
    return planeOf[index];
  }

  /** Farthest corner of the {@code index}-th new facet from the plane in which it is meant. */
  double strayOf(int index) {
    return strayOf[index];
  }

  private Optional<Unsound> cutFacetFault(int f) {
    int index = patch.id(f);
    planeOf[index] = -1;
    int source = Patch.indexOfRemoved(edit, edit.source(index));
    Vec3 normal = patch.normal(source);
    if (normal.norm() == 0) {
      return Optional.empty(); // a source without a plane; area and volume have to do
    }
    Vec3 n = normal.unit();
    for (int k = 0; k < 3; k++) {
      Vec3 p = patch.point(f, k);
      double off = Math.abs(n.dot(p.minus(patch.point(source, 0))));
      strayOf[index] = Math.max(strayOf[index], off);
      double out = beyondOutline(source, n, p);
      if (off > slack.vertex() || out > slack.vertex()) {
        return Fault.of(
            Proof.PLACE,
            "%s, cut from facet %d, has a corner %.6f mm off its plane and %.6f mm beyond its"
                + " outline (allowed %.6f)",
            patch.name(f),
            edit.source(index),
            off,
            Math.max(0, out),
            slack.vertex());
      }
    }
    if (patch.normal(f).dot(n) <= 0 && height(f) > 4 * slack.vertex()) {
      return Fault.of(Proof.PLACE, "%s faces against facet %d", patch.name(f), edit.source(index));
    }
    return Optional.empty();
  }

  private double beyondOutline(int source, Vec3 n, Vec3 p) {
    double out = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      Vec3 from = patch.point(source, k);
      Vec3 along = patch.point(source, (k + 1) % 3).minus(from);
      out = Math.max(out, p.minus(from).dot(along.cross(n)) / along.norm());
    }
    return out;
  }

  /** Least height of a facet. */
  double height(int f) {
    double longest = 0;
    for (int k = 0; k < 3; k++) {
      longest = Math.max(longest, patch.point(f, k).distance(patch.point(f, (k + 1) % 3)));
    }
    return patch.normal(f).norm() / longest;
  }

  private Optional<Unsound> newFaceFault(int f) {
    Vec3 normal = patch.normal(f);
    Vec3[] corners = new Vec3[3];
    for (int k = 0; k < 3; k++) {
      corners[k] = patch.point(f, k).minus(tool.apex());
    }
    int best = -1;
    double most = Double.NEGATIVE_INFINITY;
    double nearest = Double.POSITIVE_INFINITY;
    for (int plane = 0; plane < tool.planes().size(); plane++) {
      double allowed = tool.planes().get(plane).snap() + slack.vertex();
      double stray = 0;
      for (Vec3 corner : corners) {
        double distance = tool.distance(plane, corner);
        stray = Math.max(stray, Math.abs(distance));
        if (distance > allowed) {
          return Fault.of(
              Proof.PLACE,
              "%s reaches %.6f mm beyond plane %d of the tool (allowed %.6f)",
              patch.name(f),
              distance,
              plane,
              allowed);
        }
      }
      nearest = Math.min(nearest, stray);
      double facing = sense * normal.dot(tool.normal(plane));
      if (stray <= allowed && facing > most) {
        most = facing;
        best = plane;
        strayOf[patch.id(f)] = stray;
      }
    }
    planeOf[patch.id(f)] = best;
    if (best < 0) {
      return Fault.of(
          Proof.PLACE,
          "%s lies in no plane of the tool; the nearest is %.6f mm away",
          patch.name(f),
          nearest);
    }
    if (sense > 0 && tool.planes().get(best).role() == ToolPlane.Role.BASE) {
      return Fault.of(
          Proof.PLACE,
          "%s shows a side of the added body that is meant to be inside",
          patch.name(f));
    }
    if (most <= 0 && height(f) > 4 * (tool.planes().get(best).snap() + slack.vertex())) {
      return Fault.of(Proof.PLACE, "%s faces the wrong way", patch.name(f));
    }
    return Optional.empty();
  }
}
