package gable.place;

import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.opc.Problem;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import java.util.List;

/**
 * All meshes of a package as they stand on the plate.
 *
 * @param placed meshes that are printed, one entry for each object and direction, in the order of
 *     the build
 * @param unplaced objects, or uses of objects, that are not printed or cannot be examined
 * @param problems build items that lead nowhere
 */
public record Placements(
    List<PlacedObject> placed, List<Unplaced> unplaced, List<Problem> problems) {

  public Placements {
    placed = List.copyOf(placed);
    unplaced = List.copyOf(unplaced);
    problems = List.copyOf(problems);
  }

  /**
   * Walks the build.
   *
   * @param up direction of the model that points up on the plate
   */
  public static Placements of(ModelPackage model, Vec3 up, ModelLimits limits) {
    return new BuildWalk(model, Affine3.layingUp(up), limits).run();
  }
}
