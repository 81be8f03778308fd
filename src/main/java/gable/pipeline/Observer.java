package gable.pipeline;

import gable.mesh.Mesh;
import gable.mesh.MeshEdit;

/**
 * Whoever started a run and wants to follow or stop it. Called by the threads of the run, at any
 * time and several at once, and should return soon.
 */
public interface Observer {

  /** One who neither looks nor stops. */
  Observer NONE = new Observer() {};

  /** True once the run should stop; it then ends with a CancellationException. */
  default boolean cancelled() {
    return false;
  }

  /**
   * Some objects are done.
   *
   * @param done how many
   * @param total of how many
   */
  default void progress(int done, int total) {}

  /**
   * An object was looked at. Called once for each object that lies on the plate, whether or not it
   * could be examined.
   *
   * @param result what became of it; the result of the file holds the same
   * @param mesh its mesh in print space, at its first place
   * @param edit what was done to that mesh, also in print space; empty if nothing was
   */
  default void seen(ObjectResult result, Mesh mesh, MeshEdit edit) {}
}
