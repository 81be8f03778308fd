package gable.opc;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/**
 * The start of an element as it stands in a part.
 *
 * @param namespace its namespace, empty if it has none
 * @param name its local name
 * @param attributes its attributes in the order of the text
 * @param prefixes namespaces that the element itself declares, by prefix
 * @param where tells where it starts, which costs something
 */
public record XmlTag(
    String namespace,
    String name,
    List<Attribute> attributes,
    Map<String, String> prefixes,
    Supplier<Place> where) {

  /**
   * An attribute.
   *
   * @param namespace its namespace, empty if its name has no prefix
   * @param name its local name
   * @param value its value
   */
  public record Attribute(String namespace, String name, String value) {}

  public XmlTag {
    attributes = List.copyOf(attributes);
    prefixes = Map.copyOf(prefixes);
  }

  /** The element whose start is the current event of a parser. */
  public static XmlTag of(XMLStreamReader reader, Supplier<Place> where) {
    Attribute[] attributes = new Attribute[reader.getAttributeCount()];
    for (int i = 0; i < attributes.length; i++) {
      attributes[i] =
          new Attribute(
              orEmpty(reader.getAttributeNamespace(i)),
              reader.getAttributeLocalName(i),
              reader.getAttributeValue(i));
    }
    Map<String, String> prefixes = new LinkedHashMap<>();
    for (int i = 0; i < reader.getNamespaceCount(); i++) {
      prefixes.put(orEmpty(reader.getNamespacePrefix(i)), orEmpty(reader.getNamespaceURI(i)));
    }
    return new XmlTag(
        orEmpty(reader.getNamespaceURI()),
        reader.getLocalName(),
        List.of(attributes),
        prefixes,
        where);
  }

  private static String orEmpty(@Nullable String text) {
    return text == null ? "" : text;
  }

  /** Where it starts. */
  public Place place() {
    return where.get();
  }

  /** Value of an attribute without a prefix. */
  public Optional<String> value(String wanted) {
    return value("", wanted);
  }

  /** Value of an attribute of a namespace. */
  public Optional<String> value(String wantedNamespace, String wanted) {
    for (Attribute attribute : attributes) {
      if (attribute.name.equals(wanted) && attribute.namespace.equals(wantedNamespace)) {
        return Optional.of(attribute.value);
      }
    }
    return Optional.empty();
  }
}
