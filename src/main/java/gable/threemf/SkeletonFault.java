package gable.threemf;

import javax.xml.stream.Location;
import javax.xml.stream.XMLStreamException;

/** Something that 3MF forbids in every model part, found while the events pass. */
final class SkeletonFault extends XMLStreamException {

  private static final long serialVersionUID = 1;

  /** What was found. */
  enum What {
    /** A document type declaration. */
    DOCTYPE,
    /** Another root element. */
    ROOT
  }

  private final What what;
  private final String found;

  SkeletonFault(What what, String found, Location location) {
    super(found, location);
    this.what = what;
    this.found = found;
  }

  What what() {
    return what;
  }

  String found() {
    return found;
  }
}
