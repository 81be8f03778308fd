package gable.catalogue;

import gable.report.Digest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Set;

/**
 * The output folder: models under the names that they have in the input folder, and beside them
 * what the run makes of its own. Everything is written in a folder for work first and moved into
 * place when it is complete; the folder for work is emptied when a run begins and goes when it
 * ends.
 */
final class Folder {

  static final String JOURNAL = "journal.jsonl";
  static final String LINES = "catalogue.jsonl";
  static final String TABLE = "catalogue.csv";
  static final String PAGE = "index.html";
  private static final String OWN = "gable-catalogue";
  private static final String WORK = "work";

  private final Path root;

  Folder(Path root) {
    this.root = root;
  }

  /** Makes the folder, and empties the one for work. */
  void prepare() throws IOException {
    Files.createDirectories(root.resolve(OWN));
    removeAll(work());
    Files.createDirectories(work());
  }

  /** Where the journal is. */
  Path journal() {
    return root.resolve(OWN).resolve(JOURNAL);
  }

  /** Makes the folder of the journal. */
  void makeOwn() throws IOException {
    Files.createDirectories(root.resolve(OWN));
  }

  /** Whether a model would be where the run keeps things of its own. */
  static boolean isReserved(ModelFile model) {
    return Set.of(OWN, LINES, TABLE, PAGE).contains(model.relative().getName(0).toString());
  }

  private Path work() {
    return root.resolve(OWN).resolve(WORK);
  }

  /** A place for work on something, of its own for each name and number. */
  Path aside(String what, long number) {
    return work().resolve(number + "-" + what);
  }

  /** Where the output of a model goes. */
  Path output(ModelFile model) {
    return root.resolve(model.relative());
  }

  /** Where a file about a model is, below the folder: short and plain whatever the model's name. */
  static String about(String model, String ending) {
    return OWN + "/models/" + Digest.of(model).substring(0, 24) + ending;
  }

  /** Something below the folder. */
  Path below(String name) {
    return root.resolve(name);
  }

  /** Moves a complete file to its place. */
  static void move(Path from, Path to) throws IOException {
    Path parent = to.getParent();
    if (parent != null) {
      Files.createDirectories(parent);
    }
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
  }

  /** Writes bytes and moves them to their place. */
  void put(byte[] bytes, String name, long number) throws IOException {
    Path aside = aside("file", number);
    Files.write(aside, bytes);
    move(aside, below(name));
  }

  /** Writes text and moves it to its place. */
  void put(String text, String name) throws IOException {
    put(text.getBytes(StandardCharsets.UTF_8), name, 0);
  }

  /** Replaces the journal. */
  void putJournal(String text) throws IOException {
    put(text, OWN + "/" + JOURNAL);
  }

  /** Removes the folder for work. */
  void tidy() throws IOException {
    removeAll(work());
  }

  private static void removeAll(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes about)
              throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path done, IOException failure)
              throws IOException {
            Files.delete(done);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
