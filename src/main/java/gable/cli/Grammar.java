package gable.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
  static final String PAIRS = "pairs";
  static final String COMPARE = "compare";
  static final String COMPLETION = "completion";
  static final String MANUAL = "manual";

  static final String OUT = "--output";
  static final String SLOPE = "--slope";
  static final String SMALLEST = "--smallest-bore";
  static final String LARGEST = "--largest-bore";
  static final String ROOF = "--least-roof";
  static final String BRIDGE = "--longest-bridge";
  static final String TIP = "--tip";
  static final String LEAD_IN = "--lead-in";
  static final String WEB_WIDTH = "--web-width";
  static final String CLEARANCE = "--clearance";
  static final String GUSSET = "--gusset";
  static final String LAYER = "--layer";
  static final String LINE = "--line";
  static final String UP = "--up";
  static final String ONLY = "--only";
  static final String SKIP = "--skip";
  static final String WITH = "--with";
  static final String WITHOUT = "--without";
  static final String MIXED = "--mixed-orientation";
  static final String UNKNOWN = "--unknown-parts";
  static final String PLUGINS = "--plugins";
  static final String SETTINGS = "--settings";
  static final String USE = "--use";
  static final String IN_PLACE = "--in-place";
  static final String BACKUP = "--backup";
  static final String REPORTS = "--reports";
  static final String JOIN = "--join-vertices";
  static final String PARTNER = "--partner";
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
            "Makes holes in 3MF models print without support: finds the round holes that lie flat,"
                + " gives each a roof that carries itself, proves that the part is still sound, and"
                + " leaves everything else as it was. The input is never touched unless you say so.")
        .option(flag(VERSION, "Show the version."));
  }

  /** What is shown below the commands. */
  static List<String> footer() {
    List<String> lines = new ArrayList<>();
    lines.add("");
    lines.add("Look first, then change; then a whole folder, and again only what is new:");
    examples().forEach(example -> lines.add("  " + example));
    lines.add("");
    lines.add("All options of a command: gable reshape --help. Everything at once: gable manual");
    lines.add("");
    lines.add("Exit codes:");
    exitCodes()
        .forEach((code, words) -> lines.add(String.format(Locale.ROOT, "%4d  %s", code, words)));
    return lines;
  }

  /** Calls to begin with. */
  static List<String> examples() {
    return List.of(
        "gable inspect bracket.3mf                          lists the bores",
        "gable preview bracket.3mf -o look.html             shows what would be done",
        "gable reshape bracket.3mf -o bracket-roofed.3mf    does it",
        "gable catalogue models repaired                    does it to a folder");
  }

  /** What the exit codes mean. */
  static Map<Integer, String> exitCodes() {
    Map<Integer, String> codes = new LinkedHashMap<>();
    codes.put(ExitCode.DONE, "done; also when nothing had to be changed");
    codes.put(ExitCode.WRONG_CALL, "the call is wrong; nothing was read");
    codes.put(ExitCode.INVALID, "the input cannot be read or is not valid");
    codes.put(ExitCode.NOT_WRITTEN, "the output cannot be written");
    codes.put(ExitCode.NOTHING_EXAMINED, "nothing could be examined; no output");
    codes.put(ExitCode.NOT_MET, "a gate is not met (validate, --fail-on)");
    codes.put(ExitCode.INTERNAL, "a fault of the program");
    return codes;
  }

  /** What a file of settings is. */
  static List<String> settingsWords() {
    return List.of(
        "A text file in UTF-8 with lines such as slope = 50; the names are those of the options"
            + " without dashes, and options without a value are yes or no. From # on a line is a"
            + " remark.",
        "Lines below a heading such as [petg] count only with --use petg; so one file can hold what"
            + " each material or machine needs. What the call itself says comes first, then the"
            + " heading that is named last.");
  }

  /** Words that an option, or a command that takes no files, can have as its value. */
  static Map<String, List<String>> choices() {
    Map<String, List<String>> choices = new LinkedHashMap<>();
    choices.put(FORMAT, List.of("html", "markdown", "text"));
    choices.put(GUSSET, List.of("below", "both"));
    choices.put(MIXED, List.of("clone", "leave"));
    choices.put(UNKNOWN, List.of("keep", "drop"));
    choices.put(FAIL_ON, List.of("left", "rejected", "notice"));
    choices.put(COMPLETION, List.of("bash", "zsh"));
    return choices;
  }

  /** The commands, in the order in which they are shown. */
  static List<Syntax> commands() {
    return List.of(
        inspect(),
        preview(),
        reshape(),
        catalogue(),
        pairs(),
        compare(),
        validate(),
        reshapers(),
        cautions(),
        completion(),
        manual());
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
    command.synopsis("gable reshape FILE... --in-place [--backup=SUFFIX] [OPTION...]");
    command.files(1, Integer.MAX_VALUE, "The model; - reads it from standard input.");
    Option out =
        out(
            "OUT",
            "Where the result goes; - is standard output. Naming FILE itself replaces it, once"
                + " the result is complete and checked.");
    out.setRequired(false);
    command.option(out);
    command.option(
        flag(
            IN_PLACE,
            "Replace each FILE by its result, once that is complete and checked. A FILE in which"
                + " nothing is to be changed is not touched."));
    command.option(
        value(
            BACKUP,
            "SUFFIX",
            "With --in-place: keep what was replaced as FILE with this at the end of its name, such"
                + " as .orig. One that is there already is never overwritten."));
    command.option(value(REPORT, "REPORT", "Write a report with drawings, too."));
    command.option(format());
    shared(command);
    return command;
  }

  private static Syntax compare() {
    Syntax command =
        command(
            COMPARE,
            "gable compare BEFORE AFTER -o REPORT [OPTION...]",
            "Writes a report of what differs between two models, whoever made them: features by"
                + " their places, objects, metadata, parts of the package. Writes nothing else.");
    command.files(2, 2, "");
    command.option(out("REPORT", "Where the report goes; - is standard output."));
    command.option(format());
    command.option(SettingOptions.up());
    command.option(flag(QUIET, "Show nothing but errors."));
    return command;
  }

  private static Syntax pairs() {
    Syntax command =
        command(
            PAIRS,
            "gable pairs [OPTION...] FILE...",
            "Tells which pins belong to which bores, and the clearance. Within each"
                + " FILE and across; by position, by the pattern of several, or by size where nothing"
                + " else fits. What cannot be told is listed, too. Writes nothing.");
    command.files(1, Integer.MAX_VALUE, "The models; - reads one from standard input.");
    command.option(SettingOptions.up());
    telling(command);
    return command;
  }

  private static Syntax completion() {
    Syntax command =
        command(
            COMPLETION,
            "gable completion SHELL",
            "Writes a script that lets a shell complete calls. For bash: source <(gable completion"
                + " bash). For zsh: gable completion zsh > _gable, in a folder of $fpath.");
    return command.files(1, 1, "bash or zsh.");
  }

  private static Syntax manual() {
    return command(
        MANUAL,
        "gable manual",
        "Writes the manual page. To read it: gable manual | man -l -, or gable manual > gable.1");
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
    command.option(flag(REPORTS, "Write a report of each model, too; index.html leads to them."));
    command.option(flag(DRY_RUN, "Write nothing; say how it would go."));
    command.option(
        list(
            FAIL_ON,
            "WHAT",
            "End with code 6 if there is any of these: left (features left that may hang), rejected"
                + " (models), notice (warnings, and objects that could not be worked on)."));
    SettingOptions.addTo(command);
    command.option(flag(QUIET, "Show nothing but errors."));
    return command;
  }

  private static Syntax reshapers() {
    return command(
            RESHAPERS,
            "gable reshapers [OPTION...]",
            "Lists the installed reshapers: what each does, by which settings.")
        .option(SettingOptions.plugIns());
  }

  private static Syntax cautions() {
    return command(
        CAUTIONS, "gable cautions", "Shows what everybody who prints a changed part should know.");
  }

  private static void shared(Syntax command) {
    SettingOptions.addTo(command);
    command.repeated(partner());
    telling(command);
  }

  /** A name of a file may hold a comma, so only coming again makes several. */
  private static Option partner() {
    return value(
        PARTNER,
        "FILE",
        "A file whose parts go together with those of the model, as it was drawn: bores and"
            + " pins that are halves of joints with it get their lead-ins, webs and slots. May"
            + " come again. It is only looked at; reshape it in a call of its own, with the same"
            + " settings and the model as its partner.");
  }

  private static void telling(Syntax command) {
    command.option(value(JSON, "FILE", "Write the result as JSON too; - is standard output."));
    command.option(flag(QUIET, "Show nothing but errors."));
  }

  private static Syntax command(String name, String synopsis, String description) {
    return new Syntax(name, synopsis, description)
        .option(Option.builder("h").longOpt(HELP.substring(2)).desc("Show this text.").get());
  }

  static Option value(String name, String label, String words) {
    return Option.builder().longOpt(name.substring(2)).argName(label).hasArg().desc(words).get();
  }

  static Option list(String name, String label, String words) {
    return Option.builder()
        .longOpt(name.substring(2))
        .argName(label)
        .hasArg()
        .valueSeparator(',')
        .desc(words)
        .get();
  }

  static Option flag(String name, String words) {
    return Option.builder().longOpt(name.substring(2)).desc(words).get();
  }
}
