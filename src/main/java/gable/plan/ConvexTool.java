package gable.plan;

import gable.geom.Box3;
import gable.geom.ConvexSolid;
import gable.geom.Plane;
import gable.geom.Vec3;
import java.util.List;

/**
 * A convex polyhedron in print space that is to be taken from a solid or added to it.
 *
 * <p>The order of the planes decides ties: where a vertex of the mesh lies in several of them, an
 * earlier plane counts as drawn in further. So flanks come before the base: then their feet follow
 * every vertex of the line on which flank and base meet.
 */
public final class ConvexTool {

  private final List<ToolPlane> planes;
  private final ConvexSolid solid;
  private final Box3 box;

  private ConvexTool(List<ToolPlane> planes, ConvexSolid solid) {
    this.planes = planes;
    this.solid = solid;
    this.box = solid.box();
  }

  /**
   * The tool inside all planes.
   *
   * @param planes its bounding planes
   * @param near a point inside or near the tool
   * @param reach an upper bound on the distance of its corners from {@code near}, in millimetres
   * @throws IllegalArgumentException if the planes do not bound a solid
   */
  public static ConvexTool of(List<ToolPlane> planes, Vec3 near, double reach) {
    List<Plane> bare = planes.stream().map(ToolPlane::plane).toList();
    ConvexSolid solid = ConvexSolid.of(bare, near, 2 * reach);
    if (!solid.bounded()) {
      throw new IllegalArgumentException(
          "the planes bound no solid within " + reach + " mm of " + near);
    }
    return new ConvexTool(List.copyOf(planes), solid);
  }

  /** Its planes; ties go by their order. */
  public List<ToolPlane> planes() {
    return planes;
  }

  /** Its shape. */
  public ConvexSolid solid() {
    return solid;
  }

  /** Smallest box around it. */
  public Box3 box() {
    return box;
  }
}
