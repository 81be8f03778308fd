package gable.report;

import java.util.List;
import java.util.Locale;

/** A comparison in words. */
final class ComparisonText {

  private ComparisonText() {}

  /** How many of a table are not in it. */
  static String others(ComparisonAccount.Table table) {
    String others = table.rows().isEmpty() ? "" : " other";
    if (table.same() == 0) {
      return table.rows().isEmpty() ? "There are none." : "No other is the same in both.";
    }
    return String.format(
        Locale.ROOT,
        "%d%s %s the same in both.",
        table.same(),
        others + (table.rows().isEmpty() || table.same() == 1 ? "" : "s"),
        table.same() == 1 ? "is" : "are");
  }

  static String plain(ComparisonAccount account) {
    StringBuilder text = new StringBuilder();
    text.append(Words.safe(account.name())).append('\n');
    text.append(Words.safe(account.sentence())).append("\n\n");
    for (ComparisonAccount.Table table : account.tables()) {
      text.append(table.title().toLowerCase(Locale.ROOT)).append('\n');
      for (List<String> row : table.rows()) {
        text.append("  ").append(row.get(0)).append(": ").append(Words.safe(row.get(1)));
        text.append('\n');
        for (int column = 2; column < row.size(); column++) {
          text.append("    ").append(table.heads().get(column).toLowerCase(Locale.ROOT));
          text.append(": ").append(Words.safe(row.get(column))).append('\n');
        }
      }
      text.append("  ").append(others(table)).append("\n\n");
    }
    account.notices().forEach(each -> text.append(Words.safe(each)).append('\n'));
    text.append("files, by SHA-256\n");
    account
        .files()
        .forEach(
            (which, words) ->
                text.append("  ")
                    .append(which)
                    .append(": ")
                    .append(Words.safe(words))
                    .append('\n'));
    return text.toString();
  }

  static String markdown(ComparisonAccount account) {
    StringBuilder text = new StringBuilder();
    text.append("# ").append(MarkdownReport.safe(account.name())).append("\n\n");
    text.append(MarkdownReport.safe(account.sentence())).append("\n\n");
    for (ComparisonAccount.Table table : account.tables()) {
      text.append("## ").append(table.title()).append("\n\n");
      if (!table.rows().isEmpty()) {
        text.append("| ").append(String.join(" | ", table.heads())).append(" |\n");
        text.append("|").append("---|".repeat(table.heads().size())).append('\n');
      }
      for (List<String> row : table.rows()) {
        List<String> cells = row.stream().map(MarkdownReport::safe).toList();
        text.append("| ").append(String.join(" | ", cells)).append(" |\n");
      }
      text.append(table.rows().isEmpty() ? "" : "\n").append(others(table)).append("\n\n");
    }
    text.append("## Files, by SHA-256\n\n");
    account
        .files()
        .forEach(
            (which, words) ->
                text.append("- ")
                    .append(which)
                    .append(": ")
                    .append(MarkdownReport.safe(words))
                    .append('\n'));
    return text.toString();
  }
}
