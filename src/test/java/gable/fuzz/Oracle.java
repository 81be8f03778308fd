package gable.fuzz;

import com.fasterxml.jackson.databind.ObjectMapper;
import gable.fuzz.Soundness.Unsound;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Problem;
import gable.pipeline.FileResult;
import gable.pipeline.FileResult.Rejected;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Observer;
import gable.pipeline.Output;
import gable.pipeline.Settings;
import gable.report.JsonReport;
import gable.report.TextReport;
import gable.report.Tool;
import gable.validate.Validation;
import gable.validate.Verdict;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * Says whether what the library did with a mutant is right. Whatever the mutant holds, there is a
 * result or a declared refusal; a refusal leaves nothing behind; a result is sound.
 */
final class Oracle {

  private static final byte[] OLD = {'o', 'l', 'd'};
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Tool TOOL = Tool.here();

  private final Gable gable = Gable.installed();
  private final Settings settings = Settings.usual();
  private final Path folder;

  /**
   * An oracle.
   *
   * @param folder for files; nothing else may be in it
   */
  Oracle(Path folder) {
    this.folder = folder;
  }

  /**
   * Runs the library on a mutant.
   *
   * @param chance decides which of the dearer checks are made
   * @return what came of it, in a word or two
   */
  String check(byte[] mutant, Chance chance) throws Unsound, IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FileResult result =
        gable.reshape(
            Input.stream("mutant", new ByteArrayInputStream(mutant)),
            Output.stream(out),
            settings,
            Observer.NONE);
    checkReports(result, chance);
    checkValidation(mutant, result, chance);
    byte[] output = out.toByteArray();
    if (result instanceof Rejected rejected) {
      require(output.length == 0, "refused, but something was written");
      require(rejected.cause() != Rejected.Cause.NOT_WRITTEN, "memory cannot be written");
      checkWords(rejected.reason().sentence());
      require(!rejected.reason().code().equals("limit-memory"), "out of memory");
    } else if (result instanceof FileResult.Unchanged) {
      require(Arrays.equals(output, mutant), "unchanged, but the output differs from the input");
    } else {
      Soundness.check(mutant, output);
      if (chance.oneIn(4)) {
        checkAgain(output);
      }
      if (chance.oneIn(16)) {
        checkFailingEnds(mutant, output.length, chance);
      }
    }
    if (chance.oneIn(50)) {
      checkFiles(mutant, output, result instanceof Rejected, chance);
    }
    return word(result);
  }

  private static String word(FileResult result) {
    return result instanceof Rejected rejected
        ? "refused: " + rejected.reason().code()
        : result.getClass().getSimpleName().toLowerCase(java.util.Locale.ROOT);
  }

  private void checkReports(FileResult result, Chance chance) throws Unsound, IOException {
    checkWords(new TextReport(settings, false).text(result).replace('\n', ' '));
    if (chance.oneIn(16)) {
      JSON.readTree(new JsonReport(TOOL, settings, false).line(result));
    }
  }

  /** What is not even well-formed for one reader must not pass for the other. */
  private void checkValidation(byte[] mutant, FileResult result, Chance chance)
      throws Unsound, IOException {
    if (!chance.oneIn(4)) {
      return;
    }
    Validation validation;
    try (OpcPackage opened = OpcPackage.open(mutant, OpcLimits.DEFAULT)) {
      validation = Validation.of(opened);
    } catch (PackageException e) {
      validation = Validation.refused(e);
    }
    for (Problem finding : validation.findings()) {
      checkWords(finding.sentence());
    }
    boolean invalid = result instanceof Rejected r && r.cause() == Rejected.Cause.INVALID;
    require(
        !invalid || validation.verdict().compareTo(Verdict.WARN) > 0,
        word(result) + ", but validation says " + validation.verdict());
  }

  /** A terminal obeys control characters, so none may come through. */
  private static void checkWords(String text) throws Unsound {
    require(!text.isBlank(), "nothing is said");
    require(text.chars().noneMatch(Character::isISOControl), "control characters: " + text);
    require(!text.contains("Exception"), "an exception is shown: " + text);
  }

  /** Running on our own output changes nothing. */
  private void checkAgain(byte[] output) throws Unsound {
    FileResult again =
        gable.reshape(
            Input.stream("again", new ByteArrayInputStream(output)),
            Output.stream(new ByteArrayOutputStream()),
            settings,
            Observer.NONE);
    require(again instanceof FileResult.Unchanged, "a second run ends as " + word(again));
  }

  private void checkFailingEnds(byte[] mutant, int length, Chance chance) throws Unsound {
    FileResult notWritten =
        gable.reshape(
            Input.stream("mutant", new ByteArrayInputStream(mutant)),
            Output.stream(new Ends.Full(chance.below(length))),
            settings,
            Observer.NONE);
    require(
        notWritten instanceof Rejected full && full.cause() == Rejected.Cause.NOT_WRITTEN,
        "a full output gives " + word(notWritten));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FileResult notRead =
        gable.reshape(
            Input.stream("mutant", new Ends.Broken(mutant, chance.below(mutant.length))),
            Output.stream(out),
            settings,
            Observer.NONE);
    require(
        notRead instanceof Rejected broken && broken.cause() == Rejected.Cause.INVALID,
        "a broken input gives " + word(notRead));
    require(out.size() == 0, "a broken input gives an output");
  }

  /** The same from file to file; sometimes over an old file, sometimes over the input. */
  private void checkFiles(byte[] mutant, byte[] output, boolean refused, Chance chance)
      throws Unsound, IOException {
    Path input = folder.resolve("input.3mf");
    Path target = chance.oneIn(3) ? input : folder.resolve("output.3mf");
    boolean old = chance.oneIn(2) && !target.equals(input);
    Files.write(input, mutant);
    if (old) {
      Files.write(target, OLD);
    }
    FileResult result = gable.reshape(input, target, settings);
    require(result instanceof Rejected == refused, "a file ends as " + word(result));
    if (!refused) {
      require(Arrays.equals(Files.readAllBytes(target), output), "a file has another content");
    } else if (old) {
      require(Arrays.equals(Files.readAllBytes(target), OLD), "the old file was harmed");
    }
    boolean replaced = target.equals(input) && !refused;
    require(
        Arrays.equals(Files.readAllBytes(input), replaced ? output : mutant),
        "the input was harmed");
    boolean both = !target.equals(input) && (old || !refused);
    require(names().size() == (both ? 2 : 1), "left behind: " + names());
    Files.delete(input);
    Files.deleteIfExists(target);
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private static void require(boolean holds, String what) throws Unsound {
    if (!holds) {
      throw new Unsound(what);
    }
  }
}
