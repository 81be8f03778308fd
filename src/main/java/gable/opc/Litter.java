package gable.opc;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Temporary files of programs that were killed before they could remove them. A file is litter if
 * its program is gone and nobody has written to it for an hour: in a folder that several machines
 * share, a program that is not here may still be at work elsewhere.
 */
final class Litter {

  private static final Pattern NAME = Pattern.compile("\\.gable-(\\d{1,18})-\\d{1,4}\\.part");
  private static final Duration AGE = Duration.ofHours(1);

  private Litter() {}

  /** Name of a temporary file. */
  static String name(long process, int number) {
    return String.format(Locale.ROOT, ".gable-%d-%d.part", process, number);
  }

  /** Removes what can be removed; whatever cannot stays and harms nobody. */
  static void remove(Path folder) {
    Instant old = Instant.now().minus(AGE);
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, ".gable-*.part")) {
      for (Path file : files) {
        if (isAbandoned(file) && Files.getLastModifiedTime(file).toInstant().isBefore(old)) {
          Files.deleteIfExists(file);
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      // A folder that cannot be listed may still take a file.
    }
  }

  private static boolean isAbandoned(Path file) {
    Matcher name = NAME.matcher(file.getFileName().toString());
    return name.matches()
        && Files.isRegularFile(file)
        && ProcessHandle.of(Long.parseLong(name.group(1))).isEmpty();
  }
}
