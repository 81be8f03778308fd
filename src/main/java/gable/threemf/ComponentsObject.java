package gable.threemf;

import gable.opc.Problem;
import java.util.List;
import java.util.Optional;

/**
 * An object made of other objects.
 *
 * @param head what every object has
 * @param components the objects it is made of
 * @param problem why it cannot be used, if so
 * @param locked why the objects it is made of must not be changed, if so
 */
public record ComponentsObject(
    ObjectHead head,
    List<Reference> components,
    Optional<Problem> problem,
    Optional<Problem> locked)
    implements ModelObject {

  public ComponentsObject {
    components = List.copyOf(components);
  }

  /** The same object with a further problem, which stands behind its own. */
  ComponentsObject with(Optional<Problem> further) {
    return new ComponentsObject(head, components, problem.or(() -> further), locked);
  }
}
