package gable.threemf;

import gable.opc.Problem;
import java.util.Optional;

/**
 * An object whose shape is neither a mesh nor components, or which could not be read as either.
 *
 * @param head what every object has
 * @param reason why it cannot be used
 */
public record OtherObject(ObjectHead head, Problem reason) implements ModelObject {

  @Override
  public Optional<Problem> problem() {
    return Optional.of(reason);
  }
}
