package gable.verify;

import gable.geom.Vec3;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Unsound;
import java.util.Arrays;
import java.util.Optional;

/**
 * All that belongs to the feature is cut from the tool, and nothing else.
 *
 * <p>No new facet and no staying facet of the feature's wall enters the tool, and every facet that
 * goes or comes hangs together with a wall facet that goes. With {@link PlaceProof} this says: the
 * inside of the tool is parted by staying facets of other things only, and the cell next to the new
 * faces, which face into it, holds no solid any more.
 */
final class ExtentProof {

  private final Patch patch;
  private final ToolBody tool;
  private final Slack slack;
  private final int[] wall;
  private final ConvexClip part = new ConvexClip();
  private final double[] depths;
  private int staysInside;

  ExtentProof(Patch patch, ToolBody tool, Slack slack, int[] wall) {
    this.patch = patch;
    this.tool = tool;
    this.slack = slack;
    this.wall = wall;
    this.depths = new double[tool.planes().size()];
  }

  Optional<Unsound> fault(Components components) {
    for (int f = patch.firstAdded(); f < patch.facetCount(); f++) {
      double depth = depthInside(f);
      if (depth > 0 && !patch.isAdded(f) && !isWall(f)) {
        staysInside++;
      } else if (depth > 0) {
        return Fault.of(
            Proof.EXTENT,
            "%s%s is left %.6f mm inside the tool",
            patch.name(f),
            patch.isAdded(f) ? "" : " of the wall",
            depth);
      }
    }
    return strangerFault(components);
  }

  /** True if something that is not the feature's reaches into the tool and stays. */
  boolean leavesSomething() {
    return staysInside > 0;
  }

  private boolean isWall(int f) {
    return Arrays.binarySearch(wall, patch.id(f)) >= 0;
  }

  /** How deep a facet is in the tool, beyond slack; 0 if it stays near one of its planes. */
  private double depthInside(int f) {
    Vec3 apex = tool.apex();
    tool.clipInto(
        part,
        patch.point(f, 0).minus(apex),
        patch.point(f, 1).minus(apex),
        patch.point(f, 2).minus(apex));
    if (part.isEmpty()) {
      return 0;
    }
    tool.depths(part, depths);
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < depths.length; k++) {
      if (depths[k] <= tool.planes().get(k).snap() + slack.vertex()) {
        return 0;
      }
      least = Math.min(least, depths[k]);
    }
    return least;
  }

  private Optional<Unsound> strangerFault(Components components) {
    boolean[] hasWall = new boolean[patch.firstStaying()];
    for (int f = 0; f < patch.firstAdded(); f++) {
      hasWall[components.find(f)] |= isWall(f);
    }
    for (int f = 0; f < patch.firstStaying(); f++) {
      if (!hasWall[components.find(f)]) {
        return Fault.of(
            Proof.EXTENT,
            "%s changes but does not hang together with the wall of the feature",
            patch.name(f));
      }
    }
    return Optional.empty();
  }
}
