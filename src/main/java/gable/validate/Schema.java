package gable.validate;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The elements and attributes of all specifications, from the table {@code schema.txt} beside this
 * class. Immutable.
 */
final class Schema {

  /** Stands for the parent of a root element. */
  static final String OUTSIDE = "-";

  private final Map<String, Map<String, ElementRule>> children;
  private final Set<String> namespaces;

  Schema(Map<String, Map<String, ElementRule>> children, Set<String> namespaces) {
    this.children = children;
    this.namespaces = Set.copyOf(namespaces);
  }

  /** The table, read once. */
  static Schema table() {
    return Holder.TABLE;
  }

  private static final class Holder {
    static final Schema TABLE = SchemaText.read();
  }

  /** Namespace and local name in one text. */
  static String key(String namespace, String local) {
    return '{' + namespace + '}' + local;
  }

  /** The rule for an element in a parent. */
  Optional<ElementRule> rule(String parent, String name) {
    return Optional.ofNullable(children.getOrDefault(parent, Map.of()).get(name));
  }

  /** The rules for all children of an element, in their order. */
  Collection<ElementRule> children(String parent) {
    return children.getOrDefault(parent, Map.of()).values();
  }

  /** Whether a specification that this table holds owns the namespace. */
  boolean knows(String namespace) {
    return namespaces.contains(namespace);
  }

  /** The namespaces of all specifications. */
  Set<String> namespaces() {
    return namespaces;
  }
}
