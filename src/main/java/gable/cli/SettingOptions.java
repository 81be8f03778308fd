package gable.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.cli.Option;

/** The options that say what is to be done to a model. */
final class SettingOptions {

  private SettingOptions() {}

  /** Adds them to a command. */
  static void addTo(Syntax command) {
    limits(command);
    joints(command);
    choice(command);
    handling(command);
    files(command);
  }

  private static void limits(Syntax command) {
    command.option(
        Grammar.value(
            Grammar.SLOPE,
            "DEG",
            "Least slope from the horizontal that prints without"
                + " support: 90 is a wall, 0 a ceiling. Default: 45."));
    command.option(
        Grammar.value(Grammar.SMALLEST, "MM", "Leave bores of a smaller diameter. Default: 4."));
    command.option(
        Grammar.value(
            Grammar.LARGEST, "MM", "Leave bores of a larger diameter. Default: no limit."));
    command.option(Grammar.value(Grammar.ROOF, "MM", "Least material over a roof. Default: 1.2."));
    command.option(
        Grammar.value(
            Grammar.BRIDGE, "MM", "Longest flat span of a flat-topped roof. Default: 5."));
    command.option(
        Grammar.value(
            Grammar.LAYER,
            "MM",
            "Layer height; with --line it raises the slope limit where"
                + " 45 degrees would be too flat."));
    command.option(
        Grammar.value(
            Grammar.LINE, "MM", "Line width; with --layer for the slope, and for --web-width."));
  }

  private static void joints(Syntax command) {
    command.option(
        Grammar.value(
            Grammar.TIP,
            "MM",
            "Leg of the chamfer of a pin's tip, at most 0.4 of the pin's radius. Default: 0.15 of"
                + " the diameter, but 0.4 to 1.5."));
    command.option(
        Grammar.value(
            Grammar.LEAD_IN, "MM", "Leg of the chamfer of a bore's mouth. Default: 0.4."));
    command.option(
        Grammar.value(
            Grammar.WEB_WIDTH,
            "MM",
            "With --with gusset: thickness of the web that carries a pin. Default: two lines, or"
                + " three where two are below 0.8; without --line 0.8."));
    command.option(
        Grammar.value(
            Grammar.CLEARANCE,
            "MM",
            "With --with gusset: room on each side of a web in its slot. Default: 0.2."));
    command.option(
        Grammar.value(
            Grammar.GUSSET,
            "WHERE",
            "With --with gusset: webs stand below the pin, or on both sides, so that the part can"
                + " be turned over. Default: below."));
  }

  /** The option that has a name without dashes, if any command has it. */
  static Optional<Option> named(String name) {
    return Optional.ofNullable(inFiles().get(name));
  }

  private static void choice(Syntax command) {
    command.option(up());
    command.option(
        Grammar.list(Grammar.ONLY, "ID", "Change only these features, by the ids of inspect."));
    command.option(Grammar.list(Grammar.SKIP, "ID", "Leave these features."));
    command.option(
        Grammar.list(Grammar.WITH, "NAME", "Use these reshapers too (see gable reshapers)."));
    command.option(Grammar.list(Grammar.WITHOUT, "NAME", "Do not use these reshapers."));
    command.option(plugIns());
  }

  private static void handling(Syntax command) {
    command.option(
        Grammar.value(
            Grammar.MIXED,
            "HOW",
            "For an object that lies several ways up: clone makes one"
                + " copy for each, leave leaves it. Default: clone."));
    command.option(
        Grammar.value(
            Grammar.UNKNOWN,
            "HOW",
            "Parts that the standard does not know: keep or drop them"
                + " when something is changed. Default: keep."));
    command.option(
        Grammar.flag(
            Grammar.JOIN,
            "Where vertices are repeated instead of shared, share them in OUT, too. The mesh must"
                + " be closed then; it is examined either way."));
  }

  private static void files(Syntax command) {
    command.option(
        Grammar.value(
            Grammar.SETTINGS,
            "FILE",
            "Read settings from a text file: lines such as slope = 50, the names being those of the"
                + " options. What the call itself says comes first."));
    command.option(
        Grammar.list(
            Grammar.USE,
            "NAME",
            "Use the settings of this heading of the file, such as [petg], as well."));
  }

  /**
   * Those that may stand in a file of settings, of whatever command, by their names without dashes.
   */
  static Map<String, Option> inFiles() {
    Map<String, Option> all = new LinkedHashMap<>();
    Set<String> never =
        Set.of(
            Grammar.HELP,
            Grammar.OUT,
            Grammar.JSON,
            Grammar.REPORT,
            Grammar.PARTNER,
            Grammar.SETTINGS,
            Grammar.USE,
            Grammar.IN_PLACE,
            Grammar.DRY_RUN);
    for (Syntax command : Grammar.commands()) {
      for (Option option : command.options()) {
        if (!never.contains("--" + option.getLongOpt())) {
          all.put(option.getLongOpt(), option);
        }
      }
    }
    return all;
  }

  /** Option for the direction that is up. */
  static Option up() {
    return Grammar.value(
        Grammar.UP,
        "X,Y,Z",
        "The direction of the file that is up on the printer. Default: 0,0,1.");
  }

  /** Option for the folder of plug-ins. */
  static Option plugIns() {
    return Grammar.value(
        Grammar.PLUGINS,
        "DIR",
        "Load further reshapers from the jars of this folder. They are programs: only use those"
            + " that you trust.");
  }
}
