package gable.opc;

import jakarta.xml.bind.JAXBContext;
import jakarta.xml.bind.JAXBException;
import jakarta.xml.bind.Unmarshaller;
import jakarta.xml.bind.annotation.XmlRootElement;
import java.io.StringReader;
import java.util.List;
import java.util.ServiceLoader;
import javax.xml.namespace.QName;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.codehaus.stax2.LocationInfo;
import org.codehaus.stax2.XMLInputFactory2;
import org.codehaus.stax2.XMLStreamReader2;

/**
 * Reads relationships and content types parts: a StAX reader that knows where it is feeds JAXB,
 * which binds the elements. Nothing outside the text is ever looked at.
 */
final class OpcXml {

  private final XmlText text;
  private final OpcLimits.Xml limits;
  private final List<Problem> notices;

  private OpcXml(XmlText text, OpcLimits.Xml limits, List<Problem> notices) {
    this.text = text;
    this.limits = limits;
    this.notices = notices;
  }

  /**
   * Binds the text of a part.
   *
   * @param root type of the root element
   * @param notices where problems go that do not stop reading
   */
  static <T extends Bound> T read(
      XmlText text, Class<T> root, OpcLimits.Xml limits, List<Problem> notices)
      throws PackageException {
    return new OpcXml(text, limits, notices).read(root);
  }

  /** Walks through the text of any XML part. */
  static void walk(XmlText text, OpcLimits.Xml limits, XmlVisitor visitor) throws PackageException {
    OpcXml xml = new OpcXml(text, limits, List.of());
    try {
      GuardedReader reader = new GuardedReader(xml.reader(), limits);
      while (reader.hasNext()) {
        switch (reader.next()) {
          case XMLStreamConstants.START_ELEMENT -> {
            Place place = xml.place(reader.getLocation());
            visitor.started(XmlTag.of(reader, () -> place));
          }
          case XMLStreamConstants.END_ELEMENT -> visitor.ended();
          case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA ->
              visitor.characters(reader.getText());
          default -> {
            // comments and processing instructions say nothing
          }
        }
      }
    } catch (XMLStreamException e) {
      throw xml.wrong(e);
    }
  }

  private XMLStreamReader2 reader() throws XMLStreamException, PackageException {
    XMLStreamReader2 reader =
        (XMLStreamReader2) Parsers.FACTORY.createXMLStreamReader(new StringReader(text.text()));
    requireEncoding(reader);
    return reader;
  }

  private <T extends Bound> T read(Class<T> root) throws PackageException {
    try {
      XMLStreamReader2 located = reader();
      GuardedReader reader = new GuardedReader(located, limits);
      skipProlog(reader);
      requireRoot(reader, root.getAnnotation(XmlRootElement.class));
      Unmarshaller unmarshaller = Context.OF_PACKAGE.createUnmarshaller();
      unmarshaller.setListener(new Places(text.part(), located.getLocationInfo()));
      unmarshaller.setEventHandler(event -> noteOddElement(reader));
      T bound = unmarshaller.unmarshal(reader, root).getValue();
      while (reader.hasNext()) {
        reader.next();
      }
      return bound;
    } catch (XMLStreamException e) {
      throw wrong(e);
    } catch (JAXBException e) {
      throw wrong(e);
    }
  }

  private static void skipProlog(GuardedReader reader) throws XMLStreamException {
    int event;
    do {
      event = reader.next();
    } while (event != XMLStreamConstants.START_ELEMENT);
  }

  private void requireEncoding(XMLStreamReader2 reader) throws PackageException {
    String declared = reader.getCharacterEncodingScheme();
    if (declared != null && !text.isDeclaredAs(declared)) {
      throw new PackageException(
          new Problem(
              OpcRules.ENCODING,
              Place.of(text.part(), 1, 1),
              "it declares the encoding '" + declared + "'",
              "the encoding that it is in, UTF-8 or UTF-16"));
    }
  }

  private void requireRoot(GuardedReader reader, XmlRootElement wanted) throws PackageException {
    QName name = new QName(wanted.namespace(), wanted.name());
    if (!reader.getName().equals(name)) {
      throw new PackageException(
          new Problem(
              OpcRules.SCHEMA,
              place(reader.getLocation()),
              "the root element is " + reader.getName(),
              name.toString()));
    }
  }

  /** Elements of other namespaces are kept and ignored; unknown ones of OPC's own are wrong. */
  private boolean noteOddElement(GuardedReader reader) {
    if (reader.getEventType() == XMLStreamConstants.START_ELEMENT) {
      String namespace = reader.getNamespaceURI();
      boolean own = Bound.TYPES.equals(namespace) || Bound.RELATIONSHIPS.equals(namespace);
      notices.add(
          new Problem(
              own ? OpcRules.SCHEMA : OpcRules.FOREIGN,
              place(reader.getLocation()),
              "an element " + reader.getName(),
              "only elements of the schema"));
    }
    return true;
  }

  private PackageException wrong(JAXBException e) {
    if (e.getLinkedException() instanceof XMLStreamException cause) {
      return wrong(cause);
    }
    return new PackageException(
        new Problem(
            OpcRules.SCHEMA,
            Place.of(text.part()),
            "it cannot be read (" + e.getMessage() + ")",
            "what the schema says"),
        e);
  }

  private PackageException wrong(XMLStreamException e) {
    Place place = e.getLocation() == null ? Place.of(text.part()) : place(e.getLocation());
    if (e instanceof GuardedReader.Refusal refusal) {
      return new PackageException(refusal.problem(place), e);
    }
    String said = String.valueOf(e.getMessage()).lines().findFirst().orElse("");
    return new PackageException(
        new Problem(OpcRules.XML, place, "the XML is not well-formed (" + said + ")", "valid XML"),
        e);
  }

  private Place place(Location location) {
    return Place.of(text.part(), location.getLineNumber(), location.getColumnNumber());
  }

  /** Writes the place of each element into what it is bound to. */
  private static final class Places extends Unmarshaller.Listener {

    private final String part;
    private final LocationInfo location;

    Places(String part, LocationInfo location) {
      this.part = part;
      this.location = location;
    }

    @Override
    public void beforeUnmarshal(Object target, Object parent) {
      if (target instanceof Bound bound) {
        Location start = location.getStartLocation();
        bound.from = (int) location.getStartingCharOffset();
        bound.place = Place.of(part, start.getLineNumber(), start.getColumnNumber());
      }
    }

    @Override
    public void afterUnmarshal(Object target, Object parent) {
      if (target instanceof Bound bound) {
        try {
          bound.endTag = (int) location.getStartingCharOffset();
          bound.to = (int) location.getEndingCharOffset();
        } catch (XMLStreamException e) {
          throw new IllegalStateException("an element that was read has no end", e);
        }
      }
    }
  }

  /** Made once, when first needed, since looking for it on the class path takes long. */
  private static final class Parsers {

    static final XMLInputFactory FACTORY = create();

    private static XMLInputFactory create() {
      XMLInputFactory factory =
          ServiceLoader.load(XMLInputFactory.class, OpcXml.class.getClassLoader()).stream()
              .filter(provider -> XMLInputFactory2.class.isAssignableFrom(provider.type()))
              .findFirst()
              .orElseThrow(() -> new IllegalStateException("no parser that knows where it is"))
              .get();
      factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
      factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
      factory.setProperty(XMLInputFactory2.P_PRESERVE_LOCATION, true);
      // Else faults in text come out as unchecked exceptions when somebody asks for the text.
      factory.setProperty(XMLInputFactory2.P_LAZY_PARSING, false);
      return factory;
    }
  }

  /** Made once, when first needed: making it takes longer than reading a package's parts. */
  private static final class Context {

    static final JAXBContext OF_PACKAGE = create();

    private static JAXBContext create() {
      try {
        return JAXBContext.newInstance(Bound.Types.class, Bound.Relations.class);
      } catch (JAXBException e) {
        throw new IllegalStateException("the package's own bindings are wrong", e);
      }
    }
  }
}
