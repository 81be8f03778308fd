package gable.threemf;

import static javax.xml.stream.XMLStreamConstants.END_ELEMENT;
import static javax.xml.stream.XMLStreamConstants.START_ELEMENT;

import java.util.Optional;
import javax.xml.stream.XMLStreamException;

/**
 * The general way through a vertex or triangle list, from the events of the XML parser: comments,
 * entities, other prefixes, attributes and elements of extensions, any white space. It gives what
 * {@link PlainList} gives, and says what is wrong with the first element that is none.
 *
 * <p>The places of the elements come from a second walk over the same bytes, which meets start tags
 * in the same order.
 */
final class GeneralList {

  private static final String[] POINT = {"x", "y", "z"};
  private static final String[] CORNERS = {"v1", "v2", "v3"};
  private static final String[] PROPERTIES = {"pid", "p1", "p2", "p3"};

  private final SkeletonStream events;
  private final TagScanner tags;
  private final MeshList.Kind kind;
  private final Growing.Doubles xyz = new Growing.Doubles();
  private final Growing.Ints corners = new Growing.Ints();
  private final Growing.Ints places = new Growing.Ints();
  private Optional<ListFault> fault = Optional.empty();
  private boolean foreign;
  private final PropertyUses uses = new PropertyUses();
  private int count;

  private GeneralList(SkeletonStream events, TagScanner tags, MeshList.Kind kind) {
    this.events = events;
    this.tags = tags;
    this.kind = kind;
  }

  /**
   * Reads the list whose start tag is the current event, and stops at its end tag.
   *
   * @param content place behind that start tag
   */
  static MeshList read(SkeletonStream events, byte[] text, int content) throws XMLStreamException {
    MeshList.Kind kind =
        events.getLocalName().equals("vertices") ? MeshList.Kind.VERTICES : MeshList.Kind.TRIANGLES;
    // to the end of the text: where tags do not match, nobody knows where the list ends
    TagScanner tags = new TagScanner(text, content, text.length);
    return new GeneralList(events, tags, kind).read();
  }

  private MeshList read() throws XMLStreamException {
    for (int depth = 0; depth >= 0; ) {
      int event = events.advance();
      if (event == START_ELEMENT) {
        nextStartTag();
        if (depth == 0) {
          child();
        } else {
          foreign = true;
        }
        depth++;
      } else if (event == END_ELEMENT) {
        depth--;
      }
    }
    return kind == MeshList.Kind.VERTICES
        ? MeshList.vertices(xyz.taken(), fault, foreign)
        : MeshList.triangles(corners.taken(), places.taken(), fault, foreign, uses);
  }

  private void nextStartTag() {
    boolean found = tags.next();
    while (found && tags.closing()) {
      found = tags.next();
    }
    if (!found) {
      throw new IllegalStateException("an element of the list has no place");
    }
  }

  private void child() {
    boolean own =
        Names.CORE.equals(events.getNamespaceURI()) && events.getLocalName().equals(kind.child());
    if (!own) {
      foreign = true;
    } else if (fault.isEmpty()) {
      if (kind == MeshList.Kind.VERTICES) {
        vertex();
      } else {
        triangle();
      }
      count++;
    }
  }

  private void vertex() {
    double[] point = new double[3];
    for (int k = 0; k < 3; k++) {
      String value = value(POINT[k]);
      point[k] = value.isEmpty() ? Double.NaN : NumberText.number(value);
      if (Double.isNaN(point[k])) {
        fail(POINT[k], value, "a finite decimal number of at most 64 characters");
        return;
      }
    }
    for (double coordinate : point) {
      xyz.add(coordinate);
    }
  }

  private void triangle() {
    int[] triangle = new int[3];
    for (int k = 0; k < 3; k++) {
      String value = value(CORNERS[k]);
      triangle[k] = NumberText.index(value);
      if (triangle[k] < 0) {
        fail(CORNERS[k], value, "a vertex number from 0 to 2147483647");
        return;
      }
    }
    int[] property = new int[PROPERTIES.length];
    boolean some = false;
    for (int k = 0; k < property.length; k++) {
      String value = value(PROPERTIES[k]);
      property[k] = value.isEmpty() ? PropertyUses.NONE : NumberText.index(value);
      if (!value.isEmpty() && property[k] < 0) {
        fail(PROPERTIES[k], value, "a number from 0 to 2147483647");
        return;
      }
      some |= property[k] >= 0;
    }
    if (some) {
      uses.note(count, property[0], property[1], property[2], property[3]);
    }
    for (int corner : triangle) {
      corners.add(corner);
    }
    places.add(tags.tagStart());
  }

  private void fail(String attribute, String value, String expected) {
    String found = value.isEmpty() ? "no " + attribute : attribute + "=\"" + value + '"';
    fault = Optional.of(new ListFault(count, tags.tagStart(), found, expected));
  }

  /** Value of an attribute without a prefix, or nothing. */
  private String value(String name) {
    for (int i = 0; i < events.getAttributeCount(); i++) {
      String namespace = events.getAttributeNamespace(i);
      if (name.equals(events.getAttributeLocalName(i))
          && (namespace == null || namespace.isEmpty())) {
        return events.getAttributeValue(i);
      }
    }
    return "";
  }
}
