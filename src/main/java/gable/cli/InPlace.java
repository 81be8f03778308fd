package gable.cli;

import gable.pipeline.FileResult;
import gable.pipeline.FileResult.Rejected.Cause;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Notice;
import gable.pipeline.Observer;
import gable.pipeline.Output;
import gable.pipeline.Settings;
import gable.pipeline.Source;
import gable.report.Words;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;

/**
 * Replaces files by their results. With a suffix the old file is kept: the copy is complete before
 * the file is replaced, goes away again if the file stays as it was, and never takes the place of
 * another one.
 */
final class InPlace {

  private final Gable gable;
  private final Settings settings;
  private final Optional<String> suffix;

  InPlace(Gable gable, Settings settings, Optional<String> suffix) throws WrongCall {
    if (suffix.isPresent() && !suffix.get().matches("[^/\\\\\\p{Cntrl}]+")) {
      throw new WrongCall("--backup is the end of a name, such as .orig, not a place");
    }
    this.gable = gable;
    this.settings = settings;
    this.suffix = suffix;
  }

  FileResult reshape(Path file, Observer observer) {
    if (suffix.isEmpty() || !Files.isRegularFile(file)) {
      return gable.reshape(Input.file(file), Output.file(file), settings, observer);
    }
    Path kept = file.resolveSibling(file.getFileName() + suffix.get());
    try {
      boolean copied = copy(file, kept);
      FileResult result = gable.reshape(Input.file(file), Output.file(file), settings, observer);
      if (copied && !(result instanceof FileResult.Changed)) {
        Files.deleteIfExists(kept);
      }
      return result;
    } catch (FileAlreadyExistsException e) {
      String there = "there is another file '" + Words.safe(kept.toString()) + "' already";
      return refused(file, there + ". To do: move it away, or give another suffix.");
    } catch (IOException e) {
      String why = e.getClass().getSimpleName() + ": " + Words.safe(String.valueOf(e.getMessage()));
      return refused(file, "'" + Words.safe(kept.toString()) + "' cannot be written (" + why + ")");
    }
  }

  /** Copies, unless the copy is there already; a copy that is not complete has another name. */
  private static boolean copy(Path file, Path kept) throws IOException {
    if (Files.exists(kept)) {
      if (Files.mismatch(file, kept) >= 0) {
        throw new FileAlreadyExistsException(kept.toString());
      }
      return false;
    }
    Path aside = Files.createTempFile(kept.toAbsolutePath().getParent(), ".gable-", ".part");
    try {
      Files.copy(
          file, aside, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
      Files.move(aside, kept); // does not replace what somebody else has put there meanwhile
    } finally {
      Files.deleteIfExists(aside);
    }
    return true;
  }

  private static FileResult refused(Path file, String message) {
    Notice reason = new Notice("backup-failed", Notice.Level.ERROR, "", message);
    Source source = new Source(file.toString(), 0, "");
    return new FileResult.Rejected(source, Cause.NOT_WRITTEN, reason, List.of(), List.of());
  }
}
