package gable.threemf;

import java.util.List;
import java.util.Optional;

/**
 * One shape that an object has to take: as it is, with an edit of its mesh, or made of certain
 * variants of its components. An object whose uses ask for several variants is cloned. Compared by
 * identity: {@link Variants} makes each once.
 */
final class Variant {

  private final ModelObject object;
  private final Optional<ObjectEdit> edit;
  private final List<Optional<Variant>> components;
  private final boolean changed;

  Variant(ModelObject object, Optional<ObjectEdit> edit, List<Optional<Variant>> components) {
    this.object = object;
    this.edit = edit;
    this.components = List.copyOf(components);
    this.changed =
        edit.isPresent()
            || components.stream().anyMatch(part -> part.map(Variant::changed).orElse(false));
  }

  /** The object. */
  ModelObject object() {
    return object;
  }

  /** The edit of its mesh, if it has one. */
  Optional<ObjectEdit> edit() {
    return edit;
  }

  /** For each of its components the variant that is used, if its object exists. */
  List<Optional<Variant>> components() {
    return components;
  }

  /** True if the shape differs from the file's. */
  boolean changed() {
    return changed;
  }
}
