package gable.validate;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** An element in a parent, as the table has it. Immutable. */
final class ElementRule {

  /** It may stand between any others. */
  static final int ANYWHERE = -1;

  private final String namespace;
  private final String local;
  private final Where where;
  private final List<AttributeRule> attributes;
  private final Optional<Map<String, ElementRule>> children;

  /**
   * Where an element stands in its parent.
   *
   * @param number its number among the rules for the children of its parent
   * @param occurrence how often it may stand there: 1, ?, * or +
   * @param order its place among its siblings, or {@link #ANYWHERE}
   * @param section where the specification has it
   */
  record Where(int number, char occurrence, int order, String section) {}

  /**
   * A rule.
   *
   * @param children rules for its children by local name; nothing if its content is not looked at
   */
  ElementRule(
      String namespace,
      String local,
      Where where,
      List<AttributeRule> attributes,
      Optional<Map<String, ElementRule>> children) {
    this.namespace = namespace;
    this.local = local;
    this.where = where;
    this.attributes = List.copyOf(attributes);
    this.children = children;
  }

  String local() {
    return local;
  }

  int number() {
    return where.number;
  }

  int order() {
    return where.order;
  }

  String section() {
    return where.section;
  }

  List<AttributeRule> attributes() {
    return attributes;
  }

  /** Whether its content is not looked at. */
  boolean isOpaque() {
    return children.isEmpty();
  }

  /** The rule for a child. */
  Optional<ElementRule> child(String childNamespace, String name) {
    return children
        .map(each -> each.get(name))
        .filter(rule -> rule.namespace.equals(childNamespace));
  }

  /** The rules for all children, in their order. */
  Collection<ElementRule> children() {
    return children.map(Map::values).orElse(List.of());
  }

  /** Whether the parent must have one. */
  boolean isRequired() {
    return where.occurrence == '1';
  }

  /** Whether the parent should have some. */
  boolean isExpected() {
    return where.occurrence == '+';
  }

  /** Whether the parent may have several. */
  boolean isRepeated() {
    return where.occurrence == '*' || where.occurrence == '+';
  }
}
