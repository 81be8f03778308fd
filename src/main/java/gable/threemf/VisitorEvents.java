package gable.threemf;

import gable.opc.Place;
import gable.opc.XmlTag;
import gable.threemf.SkeletonReader.Events;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamReader;

/** Tells a visitor of the events of a parser that reads the skeleton of a part. */
final class VisitorEvents implements Events {

  private final String part;
  private final PartText text;
  private final PartScan scan;
  private final ModelVisitor visitor;
  private final SkeletonPlaces places;
  private int number;

  VisitorEvents(String part, PartText text, PartScan scan, ModelVisitor visitor) {
    this.part = part;
    this.text = text;
    this.scan = scan;
    this.visitor = visitor;
    this.places = new SkeletonPlaces(text.bytes(), scan.gaps());
  }

  @Override
  public void event(XMLStreamReader parser) {
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
