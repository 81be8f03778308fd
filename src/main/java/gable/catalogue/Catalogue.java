package gable.catalogue;

import gable.pipeline.Gable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Reshapes every 3MF below a folder into another folder, under the same names, and shows the
 * results there: {@code catalogue.jsonl}, {@code catalogue.csv}, {@code index.html}.
 *
 * <p>What was done is remembered in a journal there. A run does only what is new or changed since,
 * by the bytes of the input, the settings and the version of the program; and a run that was killed
 * at any moment and is started again ends with the same output folder as one that was not. Files
 * that took too long or could not be written are tried again.
 *
 * <p>One file that cannot be dealt with never stops the others. The input folder is only read.
 */
public final class Catalogue {

  private final Gable gable;
  private final Plan plan;

  /** One that works as planned with the reshapers of {@code gable}. */
  public Catalogue(Gable gable, Plan plan) {
    this.gable = gable;
    this.plan = plan;
  }

  /**
   * Runs, on as many threads as planned, and returns when all is done or the follower has stopped
   * it.
   *
   * @throws Refusal if a folder cannot be used
   */
  public Tally run(Path input, Path output, Follower follower) throws Refusal {
    ModelFiles files = files(input, output);
    Folder folder = new Folder(output);
    if (plan.dryRun()) {
      return dry(files, folder, follower);
    }
    try {
      folder.makeOwn();
      try (Journal journal = Journal.open(folder.journal())) {
        folder.prepare();
        Shelf shelf = new Shelf(folder, journal, gable, plan);
        Lanes lanes = new Lanes(new Workshop(gable, plan, folder), shelf, plan, follower);
        List<Lanes.Result> results = lanes.run(files.models());
        Tally tally = tally(files, results);
        if (tally.complete()) {
          finish(folder, results, tally);
        }
        folder.tidy();
        return tally;
      }
    } catch (Journal.BusyException e) {
      throw new Refusal(
          Refusal.Kind.OUTPUT,
          "another run works on '" + output + "'; wait for its end, or name another folder");
    } catch (IOException e) {
      throw notWritten(output, e);
    }
  }

  private Tally dry(ModelFiles files, Folder folder, Follower follower) throws Refusal {
    try (Journal none = Journal.none()) {
      Shelf shelf = new Shelf(folder, none, gable, plan);
      Lanes lanes = new Lanes(new Workshop(gable, plan, folder), shelf, plan, follower);
      return tally(files, lanes.run(files.models()));
    } catch (IOException e) {
      throw new IllegalStateException("a run that writes nothing cannot fail to write", e);
    }
  }

  private static Tally tally(ModelFiles files, List<Lanes.Result> results) {
    int reused = (int) results.stream().filter(Lanes.Result::reused).count();
    List<Row> rows = results.stream().map(Lanes.Result::row).toList();
    return Tally.of(files.models().size(), reused, rows, files.skipped());
  }

  private static void finish(Folder folder, List<Lanes.Result> results, Tally tally)
      throws IOException {
    List<Entry> entries = results.stream().map(Lanes.Result::entry).toList();
    List<Row> rows = results.stream().map(Lanes.Result::row).toList();
    StringBuilder lines = new StringBuilder();
    entries.forEach(entry -> lines.append(entry.report()).append('\n'));
    folder.put(lines.toString(), Folder.LINES);
    folder.put(new Table(rows).text(), Folder.TABLE);
    folder.put(new Page(rows, tally).text(), Folder.PAGE);
    List<Entry> lasting =
        results.stream().filter(Lanes.Result::lasting).map(Lanes.Result::entry).toList();
    folder.putJournal(Journal.tidy(lasting));
  }

  private static ModelFiles files(Path input, Path output) throws Refusal {
    if (!Files.isDirectory(input)) {
      throw new Refusal(
          Refusal.Kind.INPUT, "'" + input + "' is not a folder; expected one that holds models");
    }
    try {
      Path from = input.toRealPath();
      Path to = real(output);
      if (to.startsWith(from) || from.startsWith(to)) {
        throw new Refusal(
            Refusal.Kind.CALL,
            "the output folder must not lie in the input folder, nor the other way round: outputs"
                + " would be taken for models");
      }
      return ModelFiles.below(input);
    } catch (IOException e) {
      throw new Refusal(Refusal.Kind.INPUT, "'" + input + "' cannot be read: " + e.getMessage());
    }
  }

  /** The real path of something that may not exist yet. */
  private static Path real(Path path) throws IOException {
    Path whole = path.toAbsolutePath().normalize();
    Path parent = whole.getParent();
    if (Files.exists(whole) || parent == null) {
      return whole.toRealPath();
    }
    return real(parent).resolve(whole.getFileName());
  }

  private static Refusal notWritten(Path output, Exception e) {
    return new Refusal(
        Refusal.Kind.OUTPUT,
        "'"
            + output
            + "' cannot be written: "
            + e.getClass().getSimpleName()
            + ": "
            + e.getMessage()
            + ". To do: check its rights and its room; then the same call goes on.");
  }
}
