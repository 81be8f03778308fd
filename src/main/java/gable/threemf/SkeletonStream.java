package gable.threemf;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.util.StreamReaderDelegate;

/**
 * The stream of events between the XML parser and JAXB.
 *
 * <p>It numbers the tracked elements (as an attribute that JAXB binds), takes the content of long
 * lists out of the stream and reads it into arrays, notes elements that Gable does not know, and
 * refuses what 3MF forbids everywhere: a document type, another root, a deep nesting.
 */
final class SkeletonStream extends StreamReaderDelegate {

  private final SkeletonReader.Events events;
  private final byte[] text;
  private final PartScan scan;
  private final Deque<String> path = new ArrayDeque<>();
  private final Map<Integer, MeshList> lists = new HashMap<>();
  private final Map<Integer, Entries> entries = new HashMap<>();
  private final Set<Foreign> foreign = new LinkedHashSet<>();
  private final Map<String, String> prefixes = new HashMap<>();
  private final Set<Integer> ids = new HashSet<>();
  private int counted;
  private int number = -1;
  private int object = -1;
  private boolean inMesh;

  SkeletonStream(XMLStreamReader parser, byte[] text, PartScan scan, SkeletonReader.Events events) {
    super(parser);
    this.events = events;
    this.text = text;
    this.scan = scan;
    lists.putAll(scan.lists());
  }

  @Override
  public int next() throws XMLStreamException {
    return isStartElement() && takesContent() ? END_ELEMENT : advance();
  }

  /** Reads the content of a long list up to its end tag, if the current element is one. */
  private boolean takesContent() throws XMLStreamException {
    int own = number;
    String local = getLocalName();
    Optional<Entries.Kind> kind = Entries.Kind.of(getNamespaceURI(), local);
    if (kind.isPresent()) {
      entries.put(own, Entries.read(this, kind.get()));
      return true;
    }
    boolean list = inMesh && isCore() && (local.equals("vertices") || local.equals("triangles"));
    if (!list || lists.containsKey(own)) {
      return false;
    }
    if (own >= scan.elements().count()) {
      throw new IllegalStateException("element " + own + " has no place");
    }
    lists.put(own, GeneralList.read(this, text, scan.elements().span(own).content()));
    return true;
  }

  /** The next event, with the book-keeping but nothing taken out. */
  int advance() throws XMLStreamException {
    if (getEventType() == END_ELEMENT) {
      path.pop();
    }
    int event = super.next();
    if (event == DTD) {
      throw SkeletonFault.doctype(getLocation());
    }
    events.event(getParent());
    if (event == START_ELEMENT) {
      started();
    } else if (event == END_ELEMENT) {
      ended();
    }
    return event;
  }

  private void started() throws XMLStreamException {
    String local = getLocalName();
    if (path.isEmpty()) {
      root(local);
    }
    if ("resources".equals(path.peek())) {
      String id = getAttributeValue("", "id");
      ids.add(id == null ? 0 : NumberText.index(id));
    }
    number = Elements.TRACKED.contains(local) ? counted++ : -1;
    if (isCore() && local.equals("object") && "resources".equals(path.peek())) {
      object = number;
    } else if (isCore() && local.equals("mesh") && "object".equals(path.peek())) {
      inMesh = true;
    } else if (!Vocabulary.knows(getNamespaceURI(), local)) {
      foreign.add(Foreign.of(this, object, inMesh));
    }
    path.push(local);
  }

  private void ended() {
    if (isCore() && getLocalName().equals("object")) {
      object = -1;
    } else if (isCore() && getLocalName().equals("mesh")) {
      inMesh = false;
    }
  }

  private void root(String local) throws SkeletonFault {
    if (!isCore() || !local.equals("model")) {
      throw SkeletonFault.root('{' + getNamespaceURI() + '}' + local, getLocation());
    }
    for (int i = 0; i < getNamespaceCount(); i++) {
      String prefix = getNamespacePrefix(i);
      prefixes.put(prefix == null ? "" : prefix, getNamespaceURI(i));
    }
  }

  private boolean isCore() {
    return Names.CORE.equals(getNamespaceURI());
  }

  /** Number of the current element, or -1 if it is not tracked. */
  int number() {
    return number;
  }

  /** Vertex and triangle lists by the number of their element. */
  Map<Integer, MeshList> lists() {
    return lists;
  }

  /** Property and triangle set entries by the number of their element. */
  Map<Integer, Entries> entries() {
    return entries;
  }

  /** Elements that Gable does not know. */
  Set<Foreign> foreign() {
    return foreign;
  }

  /** Ids of all resources, of extensions too. */
  Set<Integer> ids() {
    return ids;
  }

  /** Namespaces that the root declares, by prefix. */
  Map<String, String> prefixes() {
    return prefixes;
  }

  /** Number of tracked elements so far. */
  int counted() {
    return counted;
  }

  private boolean numbered(int index) {
    return number >= 0 && index == super.getAttributeCount();
  }

  @Override
  public int getAttributeCount() {
    return super.getAttributeCount() + (number >= 0 ? 1 : 0);
  }

  @Override
  public String getAttributeNamespace(int index) {
    return numbered(index) ? Names.NUMBERS : super.getAttributeNamespace(index);
  }

  @Override
  public String getAttributeLocalName(int index) {
    return numbered(index) ? "number" : super.getAttributeLocalName(index);
  }

  @Override
  public String getAttributePrefix(int index) {
    return numbered(index) ? "" : super.getAttributePrefix(index);
  }

  @Override
  public String getAttributeType(int index) {
    return numbered(index) ? "CDATA" : super.getAttributeType(index);
  }

  @Override
  public String getAttributeValue(int index) {
    return numbered(index) ? Integer.toString(number) : super.getAttributeValue(index);
  }
}
