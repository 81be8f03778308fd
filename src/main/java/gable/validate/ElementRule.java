package gable.validate;

import java.util.List;

/**
 * An element in a parent.
 *
 * @param name namespace and local name as {@code {namespace}local}
 * @param local its local name
 * @param occurrence how often it may stand in its parent: 1, ?, * or +
 * @param order its place among the children of its parent, or {@link #ANYWHERE}
 * @param section where the specification has it
 * @param attributes its attributes
 * @param opaque whether its content is not looked at
 */
record ElementRule(
    String name,
    String local,
    char occurrence,
    int order,
    String section,
    List<AttributeRule> attributes,
    boolean opaque) {

  /** It may stand between any others. */
  static final int ANYWHERE = -1;

  /** Whether the parent must have one. */
  boolean required() {
    return occurrence == '1';
  }

  /** Whether the parent may have several. */
  boolean repeats() {
    return occurrence == '*' || occurrence == '+';
  }
}
