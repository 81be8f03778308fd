package gable.validate;

import java.util.List;

/**
 * An attribute that an element may have.
 *
 * @param namespace its namespace, empty if its name has no prefix
 * @param name its local name
 * @param required whether the element must have it
 * @param type what its value may be
 * @param words the only words allowed, if there are any
 * @param section where the specification has it
 */
record AttributeRule(
    String namespace,
    String name,
    boolean required,
    ValueType type,
    List<String> words,
    String section) {

  /** Whether the text may be its value. */
  boolean accepts(String text) {
    return words.isEmpty() ? type.accepts(text) : words.contains(text.strip());
  }

  /** What its value may be, in words. */
  String expected() {
    return words.isEmpty() ? type.words() : String.join(", ", words);
  }
}
