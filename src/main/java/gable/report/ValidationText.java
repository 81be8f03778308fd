package gable.report;

import gable.opc.Problem;
import gable.opc.Severity;
import gable.pipeline.Validated;
import gable.validate.Verdict;
import java.util.List;
import java.util.Locale;

/** What was found in a file, for people: what fails first, then warnings, then notes. */
public final class ValidationText {

  private final boolean failuresOnly;

  /**
   * Texts.
   *
   * @param failuresOnly whether warnings and notes are left out
   */
  public ValidationText(boolean failuresOnly) {
    this.failuresOnly = failuresOnly;
  }

  /** One line with the verdict and two for each finding. */
  public String text(Validated result) {
    StringBuilder text = new StringBuilder(Words.safe(result.source().name()));
    text.append(": ").append(result.validation().verdict().word()).append('\n');
    for (Severity severity : Severity.values()) {
      if (severity == Severity.ERROR || !failuresOnly) {
        of(result, severity).forEach(finding -> add(text, result, finding));
      }
    }
    return text.toString();
  }

  private static List<Problem> of(Validated result, Severity severity) {
    return result.validation().findings().stream()
        .filter(finding -> finding.severity() == severity)
        .toList();
  }

  private static void add(StringBuilder text, Validated result, Problem finding) {
    String where = finding.place().words();
    text.append(String.format(Locale.ROOT, "  %-8s %s", word(result, finding), finding.code()));
    text.append(where.isEmpty() ? "" : " at " + where).append('\n');
    text.append("           ").append(finding.message()).append('\n');
  }

  /** How much a finding matters: {@code fail}, {@code warning}, {@code note}. */
  static String word(Validated result, Problem finding) {
    if (finding.severity() != Severity.ERROR) {
      return finding.severity().word();
    }
    return result.validation().verdict() == Verdict.UNREAD ? "unread" : "fail";
  }
}
