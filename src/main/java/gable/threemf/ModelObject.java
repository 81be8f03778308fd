package gable.threemf;

import gable.opc.Problem;
import java.util.Optional;

/** An object resource of a model part. */
public sealed interface ModelObject permits MeshObject, ComponentsObject, OtherObject {

  /** What all objects have. */
  ObjectHead head();

  /** Name of the model part that holds the object. */
  default String part() {
    return head().part();
  }

  /** Id, unique in its part. */
  default int id() {
    return head().id();
  }

  /** Name for people, or nothing. */
  default String name() {
    return head().name();
  }

  /** Why the object cannot be used at all, if so. */
  Optional<Problem> problem();
}
