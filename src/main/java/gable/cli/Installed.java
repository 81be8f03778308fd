package gable.cli;

import gable.pipeline.Gable;
import gable.plugin.PlugIns;
import gable.report.Words;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The reshapers that a call can use: those of the program, and those of {@code --plugins}. */
final class Installed {

  private Installed() {}

  /** With the partners of the model that the call names. */
  static Gable gable(Given call) throws WrongCall {
    List<Path> partners = new ArrayList<>();
    for (String partner : call.each(Grammar.PARTNER)) {
      partners.add(Ends.partner(partner, call));
    }
    return reshapers(call).withPartners(partners);
  }

  private static Gable reshapers(Given call) throws WrongCall {
    Optional<String> folder = call.value(Grammar.PLUGINS);
    if (folder.isEmpty()) {
      return Gable.installed();
    }
    try {
      return PlugIns.added(Gable.installed(), Ends.path(folder.get()), PlugIns.USUAL_PATIENCE);
    } catch (IOException e) {
      throw new WrongCall(
          Grammar.PLUGINS + ": the folder '" + Words.safe(folder.get()) + "' cannot be read");
    }
  }
}
