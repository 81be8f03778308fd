package gable.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.cli.CommandLine;

/**
 * What a call gives: options by their names with dashes, and files. What it does not say itself may
 * come from a file of settings.
 */
final class Given {

  private final CommandLine line;
  private final Map<String, SettingsFile.Setting> settings;

  Given(CommandLine line) {
    this(line, Map.of());
  }

  private Given(CommandLine line, Map<String, SettingsFile.Setting> settings) {
    this.line = line;
    this.settings = Map.copyOf(settings);
  }

  /** The same with settings for what the call does not say itself. */
  Given with(Map<String, SettingsFile.Setting> others) {
    return new Given(line, others);
  }

  boolean has(String option) {
    return line.hasOption(bare(option)) || settings.containsKey(bare(option));
  }

  /** Value of an option, if it is given. */
  Optional<String> value(String option) {
    return Optional.ofNullable(line.getOptionValue(bare(option))).or(() -> setting(option));
  }

  /** Values of an option that takes several, between commas or by coming again. */
  List<String> values(String option) {
    String[] values = line.getOptionValues(bare(option));
    Optional<String> all = values == null ? setting(option) : Optional.of(String.join(",", values));
    return all.map(words -> List.of(words.split(",", -1))).orElse(List.of());
  }

  /** Values of an option each time that it comes, as they are. */
  List<String> each(String option) {
    String[] values = line.getOptionValues(bare(option));
    return values == null ? List.of() : List.of(values);
  }

  /** Where an option comes from, if it is a file of settings. */
  Optional<String> origin(String option) {
    return line.hasOption(bare(option))
        ? Optional.empty()
        : Optional.ofNullable(settings.get(bare(option))).map(SettingsFile.Setting::place);
  }

  private Optional<String> setting(String option) {
    return Optional.ofNullable(settings.get(bare(option))).map(SettingsFile.Setting::value);
  }

  List<String> files() {
    return List.copyOf(line.getArgList());
  }

  private static String bare(String option) {
    return option.startsWith("--") ? option.substring(2) : option.substring(1);
  }
}
