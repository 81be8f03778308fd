package gable.cli;

import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * The commands and their options with the words that explain them. Built by hand, not from
 * annotations: reading those by reflection would cost a good part of a cold start.
 */
final class Grammar {

  static final String INSPECT = "inspect";
  static final String RESHAPE = "reshape";
  static final String RESHAPERS = "reshapers";
  static final String CAUTIONS = "cautions";

  static final String OUT = "-o";
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
  static final String QUIET = "--quiet";
  static final String HELP = "--help";
  static final String VERSION = "--version";

  private Grammar() {}

  /** The whole. */
  static CommandSpec gable() {
    CommandSpec root = command("gable");
    root.usageMessage()
        .customSynopsis("gable COMMAND ...")
        .description(
            "Makes horizontal round bores in 3MF models print: gives each a peaked roof that needs"
                + " no support, proves the result, and leaves everything else as it was.")
        .footer(
            "",
            "Look first, then change:",
            "  gable inspect bracket.3mf",
            "  gable reshape bracket.3mf -o bracket-roofed.3mf",
            "",
            "Options of a command: gable inspect --help, gable reshape --help",
            "",
            "Exit codes: 0 done, 2 wrong call, 3 input unreadable or invalid, 4 output cannot be",
            "written, 5 nothing could be examined, 70 fault of the program.");
    root.addOption(flag(VERSION, "Show the version."));
    root.addSubcommand(INSPECT, inspect());
    root.addSubcommand(RESHAPE, reshape());
    root.addSubcommand(RESHAPERS, reshapers());
    root.addSubcommand(CAUTIONS, cautions());
    return root;
  }

  private static CommandSpec inspect() {
    CommandSpec spec = command(INSPECT);
    spec.usageMessage()
        .customSynopsis("gable inspect [OPTION...] FILE...")
        .description("Lists the bores of each FILE and what would be done. Writes nothing.");
    spec.addPositional(files("0..*", "1..*", "The models; - reads one from standard input."));
    shared(spec);
    return spec;
  }

  private static CommandSpec reshape() {
    CommandSpec spec = command(RESHAPE);
    spec.usageMessage()
        .customSynopsis("gable reshape FILE -o OUT [OPTION...]")
        .description(
            "Gives the bores of FILE their roofs and writes the model to OUT. Where nothing is to"
                + " be changed, OUT is equal to FILE.");
    spec.addPositional(files("0", "1", "The model; - reads it from standard input."));
    spec.addOption(
        OptionSpec.builder(OUT, "--output")
            .paramLabel("OUT")
            .type(String.class)
            .required(true)
            .order(0)
            .description(
                "Where the result goes; - is standard output. Naming FILE itself replaces it, once"
                    + " the result is complete and checked.")
            .build());
    shared(spec);
    return spec;
  }

  private static CommandSpec reshapers() {
    CommandSpec spec = command(RESHAPERS);
    spec.usageMessage()
        .customSynopsis("gable reshapers")
        .description("Lists the installed reshapers: what each does to what.");
    return spec;
  }

  private static CommandSpec cautions() {
    CommandSpec spec = command(CAUTIONS);
    spec.usageMessage()
        .customSynopsis("gable cautions")
        .description("Shows what everybody who prints a changed part should know.");
    return spec;
  }

  private static void shared(CommandSpec spec) {
    spec.addOption(
        value(
            SLOPE,
            "DEG",
            "Least slope from the horizontal that prints without"
                + " support: 90 is a wall, 0 a ceiling. Default: 45."));
    spec.addOption(value(SMALLEST, "MM", "Leave bores of a smaller diameter. Default: 4."));
    spec.addOption(value(LARGEST, "MM", "Leave bores of a larger diameter. Default: no limit."));
    spec.addOption(value(ROOF, "MM", "Least material over a roof. Default: 1.2."));
    spec.addOption(value(BRIDGE, "MM", "Longest flat span of a flat-topped roof. Default: 5."));
    spec.addOption(
        value(
            LAYER,
            "MM",
            "Layer height; with --line it raises the slope limit where"
                + " 45 degrees would be too flat."));
    spec.addOption(value(LINE, "MM", "Line width, with --layer."));
    spec.addOption(
        value(
            UP,
            "X,Y,Z",
            "The direction of the file that is up on the printer." + " Default: 0,0,1."));
    spec.addOption(list(ONLY, "ID", "Change only these features, by the ids of inspect."));
    spec.addOption(list(SKIP, "ID", "Leave these features."));
    spec.addOption(list(WITH, "NAME", "Use these reshapers too (see gable reshapers)."));
    spec.addOption(list(WITHOUT, "NAME", "Do not use these reshapers."));
    spec.addOption(
        value(
            MIXED,
            "HOW",
            "For an object that lies several ways up: clone makes one"
                + " copy for each, leave leaves it. Default: clone."));
    spec.addOption(
        value(
            UNKNOWN,
            "HOW",
            "Parts that the standard does not know: keep or drop them"
                + " when something is changed. Default: keep."));
    spec.addOption(
        flag(
            JOIN,
            "Where vertices are repeated instead of shared, share them in OUT, too. The mesh must"
                + " be closed then; it is examined either way."));
    spec.addOption(value(JSON, "FILE", "Write the result as JSON too; - is standard output."));
    spec.addOption(flag(QUIET, "Show nothing but errors."));
  }

  private static CommandSpec command(String name) {
    CommandSpec spec = CommandSpec.create().name(name);
    spec.usageMessage().sortOptions(false).abbreviateSynopsis(true).width(90);
    spec.addOption(
        OptionSpec.builder("-h", HELP)
            .usageHelp(true)
            .order(99)
            .description("Show this text.")
            .build());
    return spec;
  }

  private static PositionalParamSpec files(String index, String arity, String words) {
    return PositionalParamSpec.builder()
        .paramLabel("FILE")
        .index(index)
        .arity(arity)
        .required(true)
        .type(List.class)
        .auxiliaryTypes(String.class)
        .description(words)
        .build();
  }

  private static OptionSpec value(String name, String label, String words) {
    return OptionSpec.builder(name)
        .paramLabel(label)
        .type(String.class)
        .order(1)
        .description(words)
        .build();
  }

  private static OptionSpec list(String name, String label, String words) {
    return OptionSpec.builder(name)
        .paramLabel(label)
        .arity("1")
        .type(List.class)
        .auxiliaryTypes(String.class)
        .splitRegex(",")
        .splitRegexSynopsisLabel(",")
        .order(1)
        .description(words)
        .build();
  }

  private static OptionSpec flag(String name, String words) {
    return OptionSpec.builder(name)
        .arity("0")
        .type(Boolean.class)
        .order(1)
        .description(words)
        .build();
  }
}
