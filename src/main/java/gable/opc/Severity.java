package gable.opc;

import java.util.Locale;

/** How much a {@link Problem} matters. */
public enum Severity {
  /** The standard forbids it, or it cannot be handled safely: what it stands in is not used. */
  ERROR,
  /** The standard forbids or discourages it, but the meaning is plain: it is kept and named. */
  WARNING,
  /** Worth knowing, wrong by nobody's rule. */
  NOTE;

  /** The word for reports: {@code error}, {@code warning} or {@code note}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
