package gable.cli;

import java.util.Optional;
import org.apache.commons.cli.Option;

/** A call that cannot be meant; the message says what is wrong with it, for people. */
final class WrongCall extends Exception {

  private static final long serialVersionUID = 1L;

  WrongCall(String message) {
    super(message);
  }

  /** The same; if it is about an option from a file of settings, with the place there. */
  WrongCall from(Given call, Syntax command) {
    String message = String.valueOf(getMessage());
    for (Option option : command.options()) {
      String name = "--" + option.getLongOpt();
      Optional<String> origin = call.origin(name);
      if (origin.isPresent() && message.matches("(?s)\\Q" + name + "\\E\\b.*")) {
        return new WrongCall(message + " (it comes from " + origin.get() + ")");
      }
    }
    return this;
  }
}
