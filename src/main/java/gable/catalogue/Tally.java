package gable.catalogue;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * How a run over a folder went.
 *
 * @param models how many models there are
 * @param done how many of them were dealt with: all, unless the run was stopped
 * @param reused how many of those were known from an earlier run
 * @param changed models that were changed
 * @param unchanged models in which nothing was to be changed
 * @param rejected models that were rejected
 * @param reshaped features that were reshaped
 * @param open features that were left although they may hang in the air
 * @param remarks warnings, and errors about objects
 * @param causes why models were rejected, each cause once
 * @param skipped names that were not looked at: links and folders that cannot be read
 */
public record Tally(
    int models,
    int done,
    int reused,
    int changed,
    int unchanged,
    int rejected,
    int reshaped,
    int open,
    int remarks,
    Set<String> causes,
    List<String> skipped) {

  /** Copies the collections. */
  public Tally {
    causes = Set.copyOf(causes);
    skipped = List.copyOf(skipped);
  }

  static Tally of(int models, int reused, List<Row> rows, List<String> skipped) {
    int rejected = (int) rows.stream().filter(Row::isRejected).count();
    int changed = (int) rows.stream().filter(row -> row.result().equals("changed")).count();
    Set<String> causes = new TreeSet<>();
    rows.stream().filter(Row::isRejected).forEach(row -> causes.add(row.cause()));
    return new Tally(
        models,
        rows.size(),
        reused,
        changed,
        rows.size() - rejected - changed,
        rejected,
        rows.stream().mapToInt(Row::reshaped).sum(),
        rows.stream().mapToInt(Row::open).sum(),
        rows.stream().mapToInt(Row::remarks).sum(),
        causes,
        skipped);
  }

  /** True if every model was dealt with. */
  public boolean complete() {
    return done == models;
  }
}
