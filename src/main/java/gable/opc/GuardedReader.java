package gable.opc;

import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.util.StreamReaderDelegate;

/**
 * Lets XML through as long as it keeps to the limits and has no document type declaration. Parsers
 * that are told not to support one skip it in silence, and here it is an error.
 */
final class GuardedReader extends StreamReaderDelegate {

  private final OpcLimits.Xml limits;
  private int depth;

  GuardedReader(XMLStreamReader reader, OpcLimits.Xml limits) {
    super(reader);
    this.limits = limits;
  }

  @Override
  public int next() throws XMLStreamException {
    int event = super.next();
    if (event == XMLStreamConstants.DTD) {
      throw new Refusal(OpcRules.DTD, "a document type declaration", "none", this);
    }
    if (event == XMLStreamConstants.START_ELEMENT) {
      depth++;
      guardElement();
    } else if (event == XMLStreamConstants.END_ELEMENT) {
      depth--;
    }
    return event;
  }

  private void guardElement() throws XMLStreamException {
    guard(depth, limits.depth(), "levels of elements");
    guard(getAttributeCount() + getNamespaceCount(), limits.attributes(), "attributes");
    for (int i = 0; i < getAttributeCount(); i++) {
      guard(getAttributeValue(i).length(), limits.attributeChars(), "characters in a value");
    }
  }

  private void guard(int found, int limit, String what) throws XMLStreamException {
    if (found > limit) {
      throw new Refusal(OpcRules.XML_LIMIT, found + " " + what, "at most " + limit, this);
    }
  }

  /** XML that is refused by a rule of ours rather than by the grammar of XML. */
  static final class Refusal extends XMLStreamException {

    private static final long serialVersionUID = 1L;

    private final transient Rule rule;
    private final String found;
    private final String expected;

    Refusal(Rule rule, String found, String expected, XMLStreamReader at) {
      super(found, at.getLocation());
      this.rule = rule;
      this.found = found;
      this.expected = expected;
    }

    Problem problem(Place place) {
      return new Problem(rule, place, found, expected);
    }
  }
}
