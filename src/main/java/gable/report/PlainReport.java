package gable.report;

import gable.pipeline.Notice;
import java.util.Locale;

/** The report of one file as plain text for a terminal: what the page says, without drawings. */
public final class PlainReport {

  private PlainReport() {}

  /** The text; ends with a line feed. */
  public static String of(Account account) {
    StringBuilder text = new StringBuilder();
    text.append(Words.safe(account.name())).append('\n');
    text.append(Words.safe(account.sentence())).append("\n\n");
    text.append(
        String.format(
            Locale.ROOT,
            "area that hangs in the air: %.1f mm2 before, %.1f mm2 after\n\n",
            account.overhang().before(),
            account.overhang().after()));
    account.features().forEach(line -> feature(text, line));
    for (Notice notice : account.notices()) {
      text.append(Figures.word(notice.level())).append(": ");
      text.append(Words.safe(notice.sentence())).append('\n');
    }
    text.append("\nbefore you print\n");
    int number = 1;
    for (String caution : Cautions.ALL) {
      text.append("  ").append(number++).append(". ").append(caution).append('\n');
    }
    text.append("\nsettings\n");
    account.settings().forEach((name, value) -> fact(text, name, value));
    text.append("\nfiles, by SHA-256\n");
    account.files().forEach((name, value) -> fact(text, name, value));
    return text.toString();
  }

  private static void feature(StringBuilder text, Account.Line line) {
    text.append(line.id()).append("  ").append(line.what()).append("  ").append(line.outcome());
    text.append('\n');
    fact(text, "object", line.object());
    fact(text, "middle", line.where() + " mm");
    fact(text, "done", line.done());
    fact(text, "measures", String.join(", ", line.measures()));
    fact(text, "joint", line.joint());
    fact(text, "why", line.why());
    fact(text, "what you can do", line.remedy());
    text.append('\n');
  }

  private static void fact(StringBuilder text, String name, String value) {
    if (!value.isEmpty()) {
      text.append("  ").append(name).append(": ").append(Words.safe(value)).append('\n');
    }
  }
}
