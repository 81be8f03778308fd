package gable.opc;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * Files of others that lie beside the project or where the system property {@code gable.corpus}
 * says. Tests over them are left out, loudly, where there are none; never where CI is set.
 */
public final class Corpus {

  private static final Path FOLDER =
      Path.of(System.getProperty("gable.corpus", "../shared/corpus"));

  /**
   * One line of the index.
   *
   * @param path where it is in the corpus
   * @param file where the file is
   * @param verdict what a conforming reader does with it
   * @param editor what an editor of meshes should do with it
   */
  public record Entry(String path, Path file, String verdict, String editor) {

    @Override
    public String toString() {
      return file.getFileName() + " (" + verdict + ")";
    }
  }

  private Corpus() {}

  /** A file that is not in the index, or no test and a line that says so. */
  public static Path file(String name) {
    Path file = FOLDER.resolve(name);
    requireThere(file);
    return file;
  }

  private static void requireThere(Path file) {
    if (!Files.isRegularFile(file)) {
      if (Optional.ofNullable(System.getenv("CI")).isPresent()) {
        throw new IllegalStateException("no corpus at " + FOLDER.toAbsolutePath());
      }
      Assumptions.abort("LEFT OUT: no corpus at " + FOLDER.toAbsolutePath());
    }
  }

  /** All files of the index, or none and a line that says so. */
  public static List<Entry> entries() {
    Path index = FOLDER.resolve("INDEX.tsv");
    requireThere(index);
    try (Stream<String> lines = Files.lines(index)) {
      return lines
          .skip(1)
          .map(line -> line.split("\t", -1))
          .map(cells -> new Entry(cells[0], FOLDER.resolve(cells[0]), cells[8], cells[9]))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
