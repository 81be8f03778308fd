package gable.cli;

import gable.pipeline.Input;
import gable.pipeline.Output;
import gable.report.Words;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Names of files on the command line: what they mean, and which must not be the same. */
final class Ends {

  /** Stands for standard input or standard output. */
  static final String STANDARD = "-";

  private final Streams streams;

  Ends(Streams streams) {
    this.streams = streams;
  }

  /** Where to read. */
  Input input(String name) throws WrongCall {
    return name.equals(STANDARD)
        ? Input.stream("standard input", streams.in())
        : Input.file(path(name));
  }

  /** Where to write. */
  Output output(String name) throws WrongCall {
    return name.equals(STANDARD) ? Output.stream(streams.out()) : Output.file(path(name));
  }

  /**
   * Refuses a report that would go where a model is or goes. Standard input and standard output
   * share a name and are no clash; two things on standard output are one.
   *
   * @param inputs names of what is read
   * @param outputs names of the models that are written
   */
  void refuseReportOver(Optional<String> report, List<String> inputs, List<String> outputs)
      throws WrongCall {
    if (report.isEmpty()) {
      return;
    }
    List<String> files = new ArrayList<>(inputs);
    files.addAll(outputs);
    files.removeIf(STANDARD::equals);
    boolean both = report.get().equals(STANDARD) && outputs.contains(STANDARD);
    for (String file : files) {
      both |= !report.get().equals(STANDARD) && whole(report.get()).equals(whole(file));
    }
    if (both) {
      throw new WrongCall("a report and a model cannot both be '" + report.get() + "'");
    }
  }

  /** Refuses two reports that would go to the same place. */
  void refuseSame(Optional<String> one, Optional<String> other) throws WrongCall {
    if (one.isPresent() && other.isPresent() && whole(one.get()).equals(whole(other.get()))) {
      throw new WrongCall("two reports cannot both be '" + one.get() + "'");
    }
  }

  /** Writes a report in JSON; the exit code that this alone would give. */
  int writeReport(String target, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    try {
      if (target.equals(STANDARD)) {
        streams.out().write(bytes);
        streams.out().flush();
      } else {
        Files.write(Path.of(target), bytes);
      }
      return ExitCode.DONE;
    } catch (IOException e) {
      String found = ": the JSON report cannot be written: " + e.getMessage();
      streams.err().println("gable: " + Words.safe(target) + found);
      return ExitCode.NOT_WRITTEN;
    }
  }

  /**
   * A file that is looked at beside the models of a call.
   *
   * @throws WrongCall if it is one of them, or would be written
   */
  static Path partner(String name, Given call) throws WrongCall {
    List<String> others = new ArrayList<>(call.files());
    for (String option : List.of(Grammar.OUT, Grammar.JSON, Grammar.REPORT)) {
      call.value(option).ifPresent(others::add);
    }
    for (String other : others) {
      if (name.equals(STANDARD) || whole(other).equals(whole(name))) {
        throw new WrongCall(
            Grammar.PARTNER
                + " is another file, which is only looked at; '"
                + Words.safe(name)
                + "' is read or written by this call already");
      }
    }
    return path(name);
  }

  private static Path whole(String name) throws WrongCall {
    return path(name).toAbsolutePath().normalize();
  }

  /** A name as a path. */
  static Path path(String name) throws WrongCall {
    if (name.isEmpty()) {
      throw new WrongCall("the name of a file is empty");
    }
    try {
      return Path.of(name);
    } catch (InvalidPathException e) {
      throw new WrongCall("'" + name + "' cannot be the name of a file: " + e.getReason());
    }
  }
}
