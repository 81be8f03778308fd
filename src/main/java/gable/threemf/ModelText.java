package gable.threemf;

import gable.opc.PackageException;
import gable.opc.Place;
import gable.opc.XmlTag;
import gable.threemf.SkeletonReader.Events;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * The text of a model part with its long lists read into numbers once. Walking through the rest is
 * cheap: a part of a million triangles leaves a few lines.
 */
public final class ModelText {

  private final String part;
  private final PartText text;
  private final PartScan scan;

  private ModelText(String part, PartText text, PartScan scan) {
    this.part = part;
    this.text = text;
    this.scan = scan;
  }

  /**
   * Reads the lists of a part.
   *
   * @param part its name
   * @param bytes its content, not to be changed any more
   */
  public static ModelText of(String part, byte[] bytes) {
    return new ModelText(part, new PartText(bytes), PartScan.of(bytes));
  }

  /** Name of the part. */
  public String part() {
    return part;
  }

  PartText text() {
    return text;
  }

  PartScan scan() {
    return scan;
  }

  /**
   * Walks through the part: UTF-8 in its strict form, no document type, no outside entity, within
   * the limits.
   *
   * @throws PackageException at the first fault of the XML; what came before it has been told
   */
  public void walk(ModelVisitor visitor) throws PackageException {
    SkeletonReader.walk(part, text, scan, new Walk(visitor));
  }

  /** Tells a visitor of the events of a parser. */
  private final class Walk implements Events {

    private final ModelVisitor visitor;
    private final SkeletonPlaces places;
    private int number;

    Walk(ModelVisitor visitor) {
      this.visitor = visitor;
      this.places = new SkeletonPlaces(text.bytes(), scan.gaps());
    }

    @Override
    public void event(XMLStreamReader parser) throws XMLStreamException {
      switch (parser.getEventType()) {
        case XMLStreamConstants.START_ELEMENT -> started(parser);
        case XMLStreamConstants.END_ELEMENT -> visitor.ended();
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA ->
            visitor.characters(parser.getText());
        default -> {
          // comments and processing instructions say nothing
        }
      }
    }

    private void started(XMLStreamReader parser) {
      int offset = places.offset(parser.getLocation().getCharacterOffset());
      visitor.started(
          XmlTag.of(parser, () -> Place.of(part, text.line(offset), text.column(offset))));
      if (Elements.TRACKED.contains(parser.getLocalName())) {
        MeshList list = scan.lists().get(number++);
        if (list != null) {
          visitor.list(new MeshNumbers(part, text, list));
        }
      }
    }
  }
}
