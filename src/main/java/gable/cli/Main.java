package gable.cli;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.util.Arrays;
import java.util.List;

/** The command line: the only place that prints and the only caller of {@link System#exit}. */
public final class Main {

  /** System property that shows where in the program a fault happened. */
  private static final String DEBUG = "gable.debug";

  private Main() {}

  /** Runs the command and leaves with its exit code. */
  public static void main(String[] args) {
    Charset charset = Charset.forName(System.getProperty("native.encoding", "UTF-8"));
    // not System.out, which keeps it to itself when a disk is full or nobody listens any more
    OutputStream out = new BufferedOutputStream(new FileOutputStream(FileDescriptor.out));
    System.exit(run(args, Streams.of(System.in, out, System.err, charset)));
  }

  /** Runs the command on the given streams; its exit code. */
  static int run(String[] args, Streams streams) {
    int code = attempt(args, streams);
    if (streams.text().checkError() && code < ExitCode.NOT_WRITTEN) {
      streams.err().println("gable: not all could be written to the standard output");
      return ExitCode.NOT_WRITTEN;
    }
    return code;
  }

  private static int attempt(String[] args, Streams streams) {
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
    }
  }

  private static int parsed(String[] args, Streams streams) throws WrongCall {
    List<String> words = List.of(args);
    if (words.isEmpty() || words.get(0).startsWith("-")) {
      return bare(Grammar.gable().parse(words), streams);
    }
    String name = words.get(0);
    Syntax command =
        Grammar.commands().stream()
            .filter(known -> known.name().equals(name))
            .findFirst()
            .orElseThrow(
                () -> new WrongCall("there is no command '" + name + "'; see gable --help"));
    Given call = command.parse(words.subList(1, words.size()));
    if (call.has(Grammar.HELP)) {
      streams.text().print(HelpText.of(command));
      return ExitCode.DONE;
    }
    Given whole = call.with(SettingsFile.of(call));
    try {
      return answer(name, whole, streams);
    } catch (WrongCall e) {
      throw e.from(whole, command);
    }
  }

  private static int answer(String command, Given call, Streams streams) throws WrongCall {
    return switch (command) {
      case Grammar.INSPECT -> new InspectCommand(call, streams).run();
      case Grammar.RESHAPE -> new ReshapeCommand(call, streams).run();
      case Grammar.PAIRS -> new PairsCommand(call, streams).run();
      case Grammar.VALIDATE -> new ValidateCommand(call, streams).run();
      case Grammar.PREVIEW -> new PreviewCommand(call, streams).run();
      case Grammar.CATALOGUE -> new CatalogueCommand(call, streams).run();
      case Grammar.COMPARE -> new CompareCommand(call, streams).run();
      case Grammar.COMPLETION -> Listing.completion(call, streams);
      case Grammar.MANUAL -> Listing.manual(streams);
      case Grammar.RESHAPERS -> Listing.reshapers(Installed.gable(call), streams);
      case Grammar.CAUTIONS -> Listing.cautions(streams);
      default -> throw new IllegalStateException("a command without an answer: " + command);
    };
  }

  private static int bare(Given call, Streams streams) throws WrongCall {
    if (call.has(Grammar.HELP)) {
      streams.text().print(HelpText.of(Grammar.gable(), Grammar.commands(), Grammar.footer()));
      return ExitCode.DONE;
    }
    if (call.has(Grammar.VERSION)) {
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
