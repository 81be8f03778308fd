package gable.cli;

import java.util.List;
import org.apache.commons.cli.Option;

/** The commands and their options with the words that explain them. */
final class Grammar {

  static final String INSPECT = "inspect";
  static final String RESHAPE = "reshape";
  static final String VALIDATE = "validate";
  static final String PREVIEW = "preview";
  static final String CATALOGUE = "catalogue";
  static final String RESHAPERS = "reshapers";
  static final String CAUTIONS = "cautions";

  static final String OUT = "--output";
  static final String SLOPE = "--slope";
  static final String SMALLEST = "--smallest-bore";
  static final String LARGEST = "--largest-bore";
  static final String ROOF = "--least-roof";
  static final String BRIDGE = "--longest-bridge";
  static final String LAYER = "--layer";
  static final String LINE = "--line";
  static final String UP = "--up";
  static final String ONLY = "--only";
  static final String SKIP = "--skip";
  static final String WITH = "--with";
  static final String WITHOUT = "--without";
  static final String MIXED = "--mixed-orientation";
  static final String UNKNOWN = "--unknown-parts";
  static final String JOIN = "--join-vertices";
  static final String JSON = "--json";
  static final String REPORT = "--report";
  static final String FORMAT = "--format";
  static final String THREADS = "--threads";
  static final String MEMORY = "--memory";
  static final String TIME_LIMIT = "--time-limit";
  static final String DRY_RUN = "--dry-run";
  static final String FAIL_ON = "--fail-on";
  static final String QUIET = "--quiet";
  static final String HELP = "--help";
  static final String VERSION = "--version";

  private Grammar() {}

  /** The program without a command. */
  static Syntax gable() {
    return command(
            "",
            "gable COMMAND ...",
            "Makes horizontal round bores in 3MF models print: gives each a peaked roof that needs"
                + " no support, proves the result, and leaves everything else as it was.")
        .option(flag(VERSION, "Show the version."));
  }

  /** What is shown below the commands. */
  static List<String> footer() {
    return List.of(
        "",
        "Look first, then change:",
        "  gable inspect bracket.3mf",
        "  gable reshape bracket.3mf -o bracket-roofed.3mf",
        "",
        "Is a file as the standard wants it?",
        "  gable validate bracket.3mf",
        "",
        "Options of a command: gable inspect --help, gable reshape --help",
        "",
        "Exit codes: 0 done, 2 wrong call, 3 input unreadable or invalid, 4 output cannot be",
        "written, 5 nothing could be examined, 6 a gate is not met (validate, --fail-on),",
        "70 fault of the program.");
  }

  /** The commands, in the order in which they are shown. */
  static List<Syntax> commands() {
    return List.of(
        inspect(), preview(), reshape(), catalogue(), validate(), reshapers(), cautions());
  }

  private static Syntax inspect() {
    Syntax command =
        command(
            INSPECT,
            "gable inspect [OPTION...] FILE...",
            "Lists the bores and pins of each FILE and what would be done. Writes nothing.");
    command.files(1, Integer.MAX_VALUE, "The models; - reads one from standard input.");
    shared(command);
    return command;
  }

  private static Syntax preview() {
    Syntax command =
        command(
            PREVIEW,
            "gable preview FILE -o REPORT [OPTION...]",
            "Writes a report that shows what would be done to FILE: every feature with a section"
                + " drawn to scale, before and after. Writes nothing else.");
    command.files(1, 1, "The model; - reads it from standard input.");
    command.option(out("REPORT", "Where the report goes; - is standard output."));
    command.option(format());
    shared(command);
    return command;
  }

  private static Option out(String label, String words) {
    return Option.builder("o")
        .longOpt(OUT.substring(2))
        .argName(label)
        .hasArg()
        .required()
        .desc(words)
        .get();
  }

  private static Option format() {
    return value(FORMAT, "HOW", "Format of the report: html, markdown or text. Default: html.");
  }

  private static Syntax reshape() {
    Syntax command =
        command(
            RESHAPE,
            "gable reshape FILE -o OUT [OPTION...]",
            "Gives the bores of FILE their roofs and its pins their chamfers and writes the model to"
                + " OUT. Where nothing is to be changed, OUT is equal to FILE.");
    command.files(1, 1, "The model; - reads it from standard input.");
    command.option(
        out(
            "OUT",
            "Where the result goes; - is standard output. Naming FILE itself replaces it, once"
                + " the result is complete and checked."));
    command.option(value(REPORT, "REPORT", "Write a report with drawings, too."));
    command.option(format());
    shared(command);
    return command;
  }

  private static Syntax validate() {
    Syntax command =
        command(
            VALIDATE,
            "gable validate [OPTION...] FILE...",
            "Holds package, XML and meshes of each FILE against the rules of 3MF and lists what"
                + " breaks one: with its place and the section of the standard. What fails ends the"
                + " call with exit code 6; warnings do not. Writes nothing.");
    command.files(1, Integer.MAX_VALUE, "The models; - reads one from standard input.");
    telling(command);
    return command;
  }

  private static Syntax catalogue() {
    Syntax command =
        command(
            CATALOGUE,
            "gable catalogue IN_DIR OUT_DIR [OPTION...]",
            "Reshapes every 3MF below IN_DIR into OUT_DIR, under the same names, and lists the"
                + " results there: index.html, catalogue.csv, catalogue.jsonl. A second run does"
                + " only what is new or changed, and a run that was ended goes on.");
    command.files(0, 2, "");
    command.option(value(THREADS, "N", "Models worked on at once. Default: all cores."));
    command.option(
        value(
            MEMORY,
            "MB",
            "Memory that they may need together, by estimate; large ones wait for their turn."
                + " Default: three quarters of the heap."));
    command.option(
        value(TIME_LIMIT, "S", "Seconds after which a model is rejected. Default: 600."));
    command.option(flag(DRY_RUN, "Write nothing; say how it would go."));
    command.option(
        list(
            FAIL_ON,
            "WHAT",
            "End with code 6 if there is any of these: left (features left that may hang), rejected"
                + " (models), notice (warnings, and objects that could not be worked on)."));
    settings(command);
    command.option(flag(QUIET, "Show nothing but errors."));
    return command;
  }

  private static Syntax reshapers() {
    return command(
        RESHAPERS, "gable reshapers", "Lists the installed reshapers: what each does to what.");
  }

  private static Syntax cautions() {
    return command(
        CAUTIONS, "gable cautions", "Shows what everybody who prints a changed part should know.");
  }

  private static void shared(Syntax command) {
    settings(command);
    telling(command);
  }

  private static void telling(Syntax command) {
    command.option(value(JSON, "FILE", "Write the result as JSON too; - is standard output."));
    command.option(flag(QUIET, "Show nothing but errors."));
  }

  private static void settings(Syntax command) {
    command.option(
        value(
            SLOPE,
            "DEG",
            "Least slope from the horizontal that prints without"
                + " support: 90 is a wall, 0 a ceiling. Default: 45."));
    command.option(value(SMALLEST, "MM", "Leave bores of a smaller diameter. Default: 4."));
    command.option(value(LARGEST, "MM", "Leave bores of a larger diameter. Default: no limit."));
    command.option(value(ROOF, "MM", "Least material over a roof. Default: 1.2."));
    command.option(value(BRIDGE, "MM", "Longest flat span of a flat-topped roof. Default: 5."));
    command.option(
        value(
            LAYER,
            "MM",
            "Layer height; with --line it raises the slope limit where"
                + " 45 degrees would be too flat."));
    command.option(value(LINE, "MM", "Line width, with --layer."));
    command.option(
        value(
            UP,
            "X,Y,Z",
            "The direction of the file that is up on the printer." + " Default: 0,0,1."));
    command.option(list(ONLY, "ID", "Change only these features, by the ids of inspect."));
    command.option(list(SKIP, "ID", "Leave these features."));
    command.option(list(WITH, "NAME", "Use these reshapers too (see gable reshapers)."));
    command.option(list(WITHOUT, "NAME", "Do not use these reshapers."));
    command.option(
        value(
            MIXED,
            "HOW",
            "For an object that lies several ways up: clone makes one"
                + " copy for each, leave leaves it. Default: clone."));
    command.option(
        value(
            UNKNOWN,
            "HOW",
            "Parts that the standard does not know: keep or drop them"
                + " when something is changed. Default: keep."));
    command.option(
        flag(
            JOIN,
            "Where vertices are repeated instead of shared, share them in OUT, too. The mesh must"
                + " be closed then; it is examined either way."));
  }

  private static Syntax command(String name, String synopsis, String description) {
    return new Syntax(name, synopsis, description)
        .option(Option.builder("h").longOpt(HELP.substring(2)).desc("Show this text.").get());
  }

  private static Option value(String name, String label, String words) {
    return Option.builder().longOpt(name.substring(2)).argName(label).hasArg().desc(words).get();
  }

  private static Option list(String name, String label, String words) {
    return Option.builder()
        .longOpt(name.substring(2))
        .argName(label)
        .hasArg()
        .valueSeparator(',')
        .desc(words)
        .get();
  }

  private static Option flag(String name, String words) {
    return Option.builder().longOpt(name.substring(2)).desc(words).get();
  }
}
