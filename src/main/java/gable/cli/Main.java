package gable.cli;

import java.nio.charset.Charset;
import java.util.Arrays;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** The command line: the only place that prints and the only caller of {@link System#exit}. */
public final class Main {

  /** System property that shows where in the program a fault happened. */
  private static final String DEBUG = "gable.debug";

  private Main() {}

  /** Runs the command and leaves with its exit code. */
  public static void main(String[] args) {
    Charset charset = Charset.forName(System.getProperty("native.encoding", "UTF-8"));
    Streams streams = Streams.of(System.in, System.out, System.err, charset);
    System.exit(run(args, streams));
  }

  /** Runs the command on the given streams; its exit code. */
  static int run(String[] args, Streams streams) {
    try {
      return parsed(args, streams);
    } catch (WrongCall e) {
      streams.err().println("gable: " + e.getMessage());
      return ExitCode.WRONG_CALL;
    } catch (OutOfMemoryError e) {
      streams.err().println("gable: there is not enough memory; give it more with java -Xmx4g");
      return ExitCode.INTERNAL;
    } catch (RuntimeException | Error e) {
      fault(e, args, streams);
      return ExitCode.INTERNAL;
    } finally {
      streams.text().flush();
    }
  }

  private static int parsed(String[] args, Streams streams) throws WrongCall {
    CommandLine line = new CommandLine(Grammar.gable());
    try {
      ParseResult call = line.parseArgs(args);
      return answer(innermost(call), streams);
    } catch (UnmatchedArgumentException e) {
      throw new WrongCall(unmatched(e) + hint(e));
    } catch (ParameterException e) {
      throw new WrongCall(e.getMessage() + hint(e));
    }
  }

  private static String unmatched(UnmatchedArgumentException e) {
    String word = e.getUnmatched().get(0);
    if (e.isUnknownOption()) {
      return "there is no option " + word;
    }
    boolean atRoot = e.getCommandLine().getParent() == null;
    return atRoot ? "there is no command '" + word + "'" : "'" + word + "' is one too many";
  }

  private static String hint(ParameterException e) {
    return "; see " + e.getCommandLine().getCommandSpec().qualifiedName() + " --help";
  }

  private static ParseResult innermost(ParseResult call) {
    return call.hasSubcommand() ? innermost(call.subcommand()) : call;
  }

  private static int answer(ParseResult call, Streams streams) throws WrongCall {
    CommandSpec spec = call.commandSpec();
    if (call.isUsageHelpRequested()) {
      streams.text().print(spec.commandLine().getUsageMessage(Ansi.OFF));
      return ExitCode.DONE;
    }
    return switch (spec.name()) {
      case Grammar.INSPECT -> new InspectCommand(call, streams).run();
      case Grammar.RESHAPE -> new ReshapeCommand(call, streams).run();
      case Grammar.RESHAPERS -> Listing.reshapers(streams);
      case Grammar.CAUTIONS -> Listing.cautions(streams);
      default -> bare(call, streams);
    };
  }

  private static int bare(ParseResult call, Streams streams) throws WrongCall {
    if (call.hasMatchedOption(Grammar.VERSION)) {
      return Listing.version(streams);
    }
    throw new WrongCall("a command is missing; see gable --help");
  }

  private static void fault(Throwable fault, String[] args, Streams streams) {
    streams
        .err()
        .println(
            "gable: a fault of the program stopped it ("
                + fault
                + "). Nothing is lost: the input"
                + " is as it was. Please report it with the file, the call (gable "
                + String.join(" ", args)
                + ") and what java -D"
                + DEBUG
                + "=true shows.");
    if (Boolean.getBoolean(DEBUG)) {
      Arrays.stream(fault.getStackTrace()).forEach(frame -> streams.err().println("  " + frame));
    }
  }
}
