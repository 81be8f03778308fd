package gable.place;

import gable.opc.Problem;
import gable.threemf.ModelObject;

/**
 * An object, or some uses of it, that cannot be examined on the plate.
 *
 * @param object the object
 * @param reason why
 */
public record Unplaced(ModelObject object, Problem reason) {}
