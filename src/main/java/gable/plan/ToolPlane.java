package gable.plan;

import gable.geom.Plane;

/**
 * One bounding plane of a convex tool.
 *
 * @param plane the plane in print space, normal out of the tool
 * @param snap vertices of the mesh nearer to the plane than this, in millimetres, count as lying in
 *     it: how far the vertices that bound the feature by construction may stray from it through
 *     rounding of coordinates; 0 where none is meant to lie in it
 * @param role what the plane is for, such as {@code roof}, {@code base}, {@code end}
 */
public record ToolPlane(Plane plane, double snap, Role role) {

  /** What a plane of a tool does to the solid. */
  public enum Role {
    /** Becomes a roof or flank of the reshaped feature. */
    FLANK,
    /** Becomes a bridge: allowed to be flatter than the slope limit. */
    BRIDGE,
    /** Lies in a void, or bounds the tool towards the kept wall of the feature. */
    BASE,
    /** Ends the tool along the axis of the feature. */
    END
  }

  /** Refuses a negative snap. */
  public ToolPlane {
    if (!(snap >= 0)) {
      throw new IllegalArgumentException("negative snap distance: " + snap + " mm");
    }
  }
}
