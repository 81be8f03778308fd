package gable.compare;

import gable.mesh.Mesh;
import gable.pipeline.ObjectResult;

/**
 * An object that lies on a plate.
 *
 * @param result the object with its features; without them if it could not be examined
 * @param mesh its mesh in print space, at its first place
 */
public record Body(ObjectResult result, Mesh mesh) {}
