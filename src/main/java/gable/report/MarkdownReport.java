package gable.report;

import gable.pipeline.Notice;
import java.util.Locale;

/** The report of one file as Markdown: what the page says, without drawings. */
public final class MarkdownReport {

  private final Account account;
  private final StringBuilder text = new StringBuilder();

  private MarkdownReport(Account account) {
    this.account = account;
  }

  /** The text; ends with a line feed. */
  public static String of(Account account) {
    MarkdownReport report = new MarkdownReport(account);
    report.write();
    return report.text.toString();
  }

  private void write() {
    text.append("# ").append(safe(account.name())).append("\n\n");
    text.append(safe(account.sentence())).append("\n\n");
    text.append(
        String.format(
            Locale.ROOT,
            "Area that hangs in the air: %.1f mm² before, %.1f mm² after.\n\n",
            account.overhang().before(),
            account.overhang().after()));
    features();
    text.append("## Notices\n\n");
    for (Notice notice : account.notices()) {
      text.append("- ").append(Figures.word(notice.level())).append(": ");
      text.append(safe(notice.sentence())).append('\n');
    }
    text.append(account.notices().isEmpty() ? "None.\n" : "").append("\n## Before you print\n\n");
    int number = 1;
    for (String caution : Cautions.ALL) {
      text.append(number++).append(". ").append(safe(caution)).append('\n');
    }
    text.append("\n## Settings\n\n");
    account.settings().forEach(this::fact);
    text.append("\n## Files, by SHA-256\n\n");
    account.files().forEach(this::fact);
  }

  private void fact(String name, String value) {
    text.append("- ").append(name).append(": ").append(safe(value)).append('\n');
  }

  private void features() {
    text.append(
        "## Features\n\n| Id | Object | Kind | Middle, mm | Outcome | Done, or why not | Joint | To do |\n");
    text.append("|---|---|---|---|---|---|---|---|\n");
    for (Account.Line line : account.features()) {
      String done = line.done();
      String numbers = line.measures().isEmpty() ? "" : ": " + String.join(", ", line.measures());
      text.append("| ").append(safe(line.id())).append(" | ").append(safe(line.object()));
      text.append(" | ").append(safe(line.what()));
      text.append(" | ").append(safe(line.where())).append(" | ").append(line.outcome());
      text.append(" | ").append(safe(line.why().isEmpty() ? done + numbers : line.why()));
      text.append(" | ").append(safe(line.joint()));
      text.append(" | ").append(safe(line.remedy())).append(" |\n");
    }
    text.append('\n');
  }

  /** Text in which nothing is markup. */
  static String safe(String raw) {
    return Words.safe(raw).replaceAll("([\\\\`*_{}\\[\\]<>#|~&!])", "\\\\$1");
  }
}
