package gable.threemf;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javax.xml.stream.XMLStreamReader;

/**
 * An element that Gable does not know, or knows to forbid an edit.
 *
 * <p>Of elements that name other objects every one is kept, with its attributes; of all others one
 * for each namespace and object.
 *
 * @param namespace its namespace
 * @param name its local name; empty if it stands for several
 * @param object number of the object that it is in, or -1
 * @param inMesh whether it is in a mesh
 * @param references attributes without a prefix, as alternating names and values, of an element
 *     that names other objects
 */
record Foreign(String namespace, String name, int object, boolean inMesh, List<String> references) {

  /** Elements whose attributes name other objects, in whichever draft of their extension. */
  private static final Set<String> REFERRING =
      Set.of(
          "beamlattice",
          "booleanshape",
          "boolean",
          "alternative",
          "levelset",
          "displacementmesh",
          "mesh",
          "unsignedmesh",
          "resourceid",
          "volumedata");

  static Foreign of(XMLStreamReader element, int object, boolean inMesh) {
    String name = element.getLocalName();
    String namespace = element.getNamespaceURI() == null ? "" : element.getNamespaceURI();
    if (!REFERRING.contains(name)) {
      return new Foreign(namespace, "", object, inMesh, List.of());
    }
    List<String> references = new ArrayList<>();
    for (int i = 0; i < element.getAttributeCount(); i++) {
      if (!Names.NUMBERS.equals(element.getAttributeNamespace(i))) {
        references.add(element.getAttributeLocalName(i));
        references.add(element.getAttributeValue(i));
      }
    }
    return new Foreign(namespace, name, object, inMesh, List.copyOf(references));
  }

  /** Value of an attribute, or nothing. */
  String reference(String attribute) {
    for (int i = 0; i < references.size(); i += 2) {
      if (references.get(i).equals(attribute)) {
        return references.get(i + 1);
      }
    }
    return "";
  }
}
