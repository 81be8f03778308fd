package gable.threemf;

import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.util.StreamReaderDelegate;

/**
 * Lets the XML of a model part through as long as its names are of a length that somebody could
 * mean and no more namespaces are in scope than anybody needs. The parser itself watches depth,
 * attributes and text. The limits are our own choice.
 */
final class ModelGuard extends StreamReaderDelegate {

  private static final int NAME_CHARACTERS = 1_024;
  private static final int NAMESPACES = 256;

  private int inScope;

  ModelGuard(XMLStreamReader parser) {
    super(parser);
  }

  @Override
  public int next() throws XMLStreamException {
    int event = super.next();
    if (event == START_ELEMENT) {
      inScope += getNamespaceCount();
      guard(inScope, NAMESPACES, "namespaces in scope");
      guard(getLocalName().length(), NAME_CHARACTERS, "characters in a name");
      for (int i = 0; i < getAttributeCount(); i++) {
        guard(getAttributeLocalName(i).length(), NAME_CHARACTERS, "characters in a name");
      }
    } else if (event == END_ELEMENT) {
      inScope -= getNamespaceCount();
    }
    return event;
  }

  private void guard(int found, int limit, String what) throws XMLStreamException {
    if (found > limit) {
      throw SkeletonFault.limit(found + " " + what, "at most " + limit, getLocation());
    }
  }
}
