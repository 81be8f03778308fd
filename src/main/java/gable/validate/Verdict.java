package gable.validate;

import java.util.Locale;

/** What a reader that keeps to the standard does with a package. Later is worse. */
public enum Verdict {
  /** It opens, and there is nothing to say. */
  PASS,
  /** It opens, and a defect is reported. */
  WARN,
  /** It must not be accepted in silence. */
  FAIL,
  /** It could not be examined: not readable on this machine, or beyond a limit of ours. */
  UNREAD;

  /** The word for reports. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
