package gable.threemf;

import com.ctc.wstx.api.WstxInputProperties;
import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import jakarta.xml.bind.JAXBContext;
import jakarta.xml.bind.JAXBException;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.codehaus.stax2.XMLInputFactory2;

/**
 * Reads the skeleton of a model part. Only UTF-8 in its strict form is taken, no document type, no
 * outside entity, and sizes have limits; every fault names line and column in the whole part.
 */
final class SkeletonReader {

  /** How the parser says that one of its limits is exceeded. */
  private static final Pattern LIMIT = Pattern.compile("limit \\((\\d+)\\) [Ee]xceeded");

  /** What came out of the skeleton. */
  record Skeleton(ModelXml model, SkeletonStream stream) {}

  /** The binding, made once: it is immutable and takes far longer than reading a small model. */
  private static final class Binding {
    static final JAXBContext CONTEXT = create();

    private static JAXBContext create() {
      try {
        return JAXBContext.newInstance(ModelXml.class);
      } catch (JAXBException e) {
        throw new IllegalStateException("the model classes cannot be bound", e);
      }
    }
  }

  /** The parsers, also made once. */
  private static final class Parsers {
    static final XMLInputFactory FACTORY = create();

    private static XMLInputFactory create() {
      XMLInputFactory factory = XMLInputFactory.newFactory();
      factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
      factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
      // Else faults in text come out as unchecked exceptions when JAXB asks for the text.
      factory.setProperty(XMLInputFactory2.P_LAZY_PARSING, false);
      factory.setProperty(WstxInputProperties.P_MAX_ELEMENT_DEPTH, 64);
      factory.setProperty(WstxInputProperties.P_MAX_ATTRIBUTES_PER_ELEMENT, 256);
      factory.setProperty(WstxInputProperties.P_MAX_ATTRIBUTE_SIZE, 1 << 20);
      factory.setProperty(WstxInputProperties.P_MAX_TEXT_LENGTH, 16 << 20);
      return factory;
    }
  }

  private final String part;
  private final PartText text;
  private final PartScan scan;
  private final int from;

  private SkeletonReader(String part, PartText text, PartScan scan) {
    this.part = part;
    this.text = text;
    this.scan = scan;
    this.from = hasMark(0) ? 3 : 0;
  }

  /** Makes the binding ready, which may be done while other things are waited for. */
  static void warmUp() {
    if (Binding.CONTEXT.toString().isEmpty()) {
      throw new IllegalStateException("no binding");
    }
  }

  /** What a walk through a skeleton does with the events of the parser. */
  interface Events {

    /** Looks at the current event. */
    void event(XMLStreamReader parser);
  }

  /** Reads a skeleton; all its events are shown in passing. */
  static Skeleton read(String part, PartText text, PartScan scan, Events events)
      throws PackageException {
    return new SkeletonReader(part, text, scan).read(events);
  }

  /** Shows all events of a skeleton, whatever its root is. */
  static void walk(String part, PartText text, PartScan scan, Events events)
      throws PackageException {
    new SkeletonReader(part, text, scan).walk(events);
  }

  private void walk(Events events) throws PackageException {
    refuseOtherEncodings();
    try (Reader reader = new InputStreamReader(input(), decoder())) {
      XMLStreamReader parser = parser(reader);
      while (parser.hasNext()) {
        if (parser.next() == XMLStreamConstants.DTD) {
          throw SkeletonFault.doctype(parser.getLocation());
        }
        events.event(parser);
      }
    } catch (XMLStreamException | IOException e) {
      throw fault(e);
    }
  }

  private XMLStreamReader parser(Reader reader) throws XMLStreamException, PackageException {
    XMLStreamReader parser = new ModelGuard(Parsers.FACTORY.createXMLStreamReader(reader));
    String declared = parser.getCharacterEncodingScheme();
    if (declared != null && !declared.equalsIgnoreCase("UTF-8")) {
      throw fault(ModelRules.ENCODING, from, "encoding " + declared, "UTF-8");
    }
    return parser;
  }

  private Skeleton read(Events events) throws PackageException {
    refuseOtherEncodings();
    try (Reader reader = new InputStreamReader(input(), decoder())) {
      SkeletonStream stream = new SkeletonStream(parser(reader), text.bytes(), scan, events);
      ModelXml model =
          Binding.CONTEXT.createUnmarshaller().unmarshal(stream, ModelXml.class).getValue();
      readToEnd(stream);
      return new Skeleton(model, stream);
    } catch (JAXBException e) {
      throw fault(e.getLinkedException() == null ? e : e.getLinkedException());
    } catch (XMLStreamException | IOException e) {
      throw fault(e);
    }
  }

  /** What follows the root may still be wrong. */
  private void readToEnd(SkeletonStream stream) throws XMLStreamException {
    while (stream.hasNext()) {
      stream.next();
    }
    if (stream.counted() != scan.elements().count()) {
      throw new IllegalStateException(
          "two readings of one text: " + stream.counted() + ", " + scan.elements().count());
    }
  }

  private SkeletonInput input() {
    return new SkeletonInput(text.bytes(), from, scan.gaps());
  }

  private static CharsetDecoder decoder() {
    return StandardCharsets.UTF_8
        .newDecoder()
        .onMalformedInput(CodingErrorAction.REPORT)
        .onUnmappableCharacter(CodingErrorAction.REPORT);
  }

  private boolean hasMark(int at) {
    byte[] bytes = text.bytes();
    return bytes.length >= at + 3
        && bytes[at] == (byte) 0xEF
        && bytes[at + 1] == (byte) 0xBB
        && bytes[at + 2] == (byte) 0xBF;
  }

  /** UTF-16 and UTF-32 show by their byte order mark or by a zero among the first bytes. */
  private void refuseOtherEncodings() throws PackageException {
    byte[] bytes = text.bytes();
    for (int i = 0; i < Math.min(4, bytes.length); i++) {
      if (bytes[i] == 0 || bytes[i] == (byte) 0xFE || bytes[i] == (byte) 0xFF) {
        throw fault(ModelRules.ENCODING, i, "another encoding than UTF-8", "UTF-8");
      }
    }
    if (hasMark(0) && hasMark(3)) {
      // parsers of characters skip one that is left over, but before the XML only one may stand
      throw fault(ModelRules.XML, 3, "a second byte order mark", "well-formed XML");
    }
  }

  private PackageException fault(Throwable cause) {
    if (cause instanceof SkeletonFault fault) {
      Rule rule =
          switch (fault.what()) {
            case DOCTYPE -> ModelRules.DOCTYPE;
            case ROOT -> ModelRules.ROOT;
            case LIMIT -> ModelRules.LIMIT;
          };
      return fault(rule, place(fault.getLocation()), fault.found(), fault.expected());
    }
    int bad = badByte();
    if (bad >= 0) {
      return fault(ModelRules.ENCODING, bad, "bytes that are no UTF-8", "UTF-8");
    }
    if (cause instanceof XMLStreamException xml) {
      String found = firstLine(xml);
      Matcher limit = LIMIT.matcher(found);
      boolean over = limit.find();
      return fault(
          over ? ModelRules.LIMIT : ModelRules.XML,
          xml.getLocation() == null ? from : place(xml.getLocation()),
          found,
          over ? "at most " + limit.group(1) : "well-formed XML");
    }
    return fault(ModelRules.XML, from, firstLine(cause), "well-formed XML");
  }

  private static String firstLine(Throwable cause) {
    String text = String.valueOf(cause.getMessage());
    int end = text.indexOf('\n');
    String line = end < 0 ? text : text.substring(0, end);
    return line.endsWith(".") ? line.substring(0, line.length() - 1) : line;
  }

  private PackageException fault(Rule rule, int place, String found, String expected) {
    Place where = Place.of(part, text.line(place), text.column(place));
    return new PackageException(new Problem(rule, where, found, expected));
  }

  /** Offset in the part of a location in the characters of the skeleton. */
  private int place(Location location) {
    CharBuffer characters = CharBuffer.allocate(4096);
    CharsetDecoder decoder = decoder();
    long wanted = Math.max(0, location.getCharacterOffset());
    ByteBuffer bytes = ByteBuffer.wrap(input().readAllBytes());
    while (wanted > 0 && bytes.hasRemaining()) {
      characters.clear().limit((int) Math.min(wanted, characters.capacity()));
      CoderResult result = decoder.decode(bytes, characters, true);
      wanted -= characters.position();
      if (result.isError() || characters.position() == 0) {
        break;
      }
    }
    return SkeletonInput.placeOf(bytes.position(), from, scan.gaps());
  }

  /** Offset in the part of the first byte that is no UTF-8, or -1. */
  private int badByte() {
    ByteBuffer bytes = ByteBuffer.wrap(input().readAllBytes());
    CharBuffer characters = CharBuffer.allocate(4096);
    CharsetDecoder decoder = decoder();
    CoderResult result = CoderResult.OVERFLOW;
    while (result.isOverflow()) {
      characters.clear();
      result = decoder.decode(bytes, characters, true);
    }
    return result.isError() ? SkeletonInput.placeOf(bytes.position(), from, scan.gaps()) : -1;
  }
}
