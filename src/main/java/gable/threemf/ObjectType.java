package gable.threemf;

import java.util.Locale;
import java.util.Optional;

/** What an object is for. Source: 3MF core specification 1.4, section 4. */
public enum ObjectType {
  MODEL,
  SOLIDSUPPORT,
  SUPPORT,
  SURFACE,
  OTHER;

  /** The type with a name as the standard spells it. */
  static Optional<ObjectType> of(String word) {
    for (ObjectType type : values()) {
      if (type.word().equals(word)) {
        return Optional.of(type);
      }
    }
    return Optional.empty();
  }

  /** The name as the standard spells it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
