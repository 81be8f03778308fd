package gable.validate;

import java.util.Set;

/**
 * The elements and attributes of all specifications, from the table {@code schema.txt} beside this
 * class.
 *
 * @param outside stands for the parent of a root element
 * @param namespaces the namespaces of all specifications
 */
record Schema(ElementRule outside, Set<String> namespaces) {

  Schema {
    namespaces = Set.copyOf(namespaces);
  }

  /** The table, read once. */
  static Schema table() {
    return Holder.TABLE;
  }

  private static final class Holder {
    static final Schema TABLE = SchemaText.read();
  }

  /** Whether a specification that this table holds owns the namespace. */
  boolean knows(String namespace) {
    return namespaces.contains(namespace);
  }
}
