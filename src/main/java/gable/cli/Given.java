package gable.cli;

import java.util.List;
import java.util.Optional;
import org.apache.commons.cli.CommandLine;

/** What a call gives: options by their names with dashes, and files. */
final class Given {

  private final CommandLine line;

  Given(CommandLine line) {
    this.line = line;
  }

  boolean has(String option) {
    return line.hasOption(bare(option));
  }

  /** Value of an option, if it is given. */
  Optional<String> value(String option) {
    return Optional.ofNullable(line.getOptionValue(bare(option)));
  }

  /** Values of an option that takes several, between commas or by coming again. */
  List<String> values(String option) {
    String[] values = line.getOptionValues(bare(option));
    return values == null ? List.of() : List.of(String.join(",", values).split(",", -1));
  }

  List<String> files() {
    return List.copyOf(line.getArgList());
  }

  private static String bare(String option) {
    return option.startsWith("--") ? option.substring(2) : option.substring(1);
  }
}
