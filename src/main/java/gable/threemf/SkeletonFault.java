package gable.threemf;

import javax.xml.stream.Location;
import javax.xml.stream.XMLStreamException;

/** Something that 3MF or a limit forbids in every model part, found while the events pass. */
final class SkeletonFault extends XMLStreamException {

  private static final long serialVersionUID = 1;

  /** What was found. */
  enum What {
    /** A document type declaration. */
    DOCTYPE,
    /** Another root element. */
    ROOT,
    /** More of something than allowed. */
    LIMIT
  }

  private final What what;
  private final String found;
  private final String expected;

  private SkeletonFault(What what, String found, String expected, Location location) {
    super(found, location);
    this.what = what;
    this.found = found;
    this.expected = expected;
  }

  static SkeletonFault doctype(Location location) {
    return new SkeletonFault(What.DOCTYPE, "a document type declaration", "none", location);
  }

  static SkeletonFault root(String name, Location location) {
    return new SkeletonFault(What.ROOT, "the root " + name, "a 3MF model", location);
  }

  static SkeletonFault limit(String found, String expected, Location location) {
    return new SkeletonFault(What.LIMIT, found, expected, location);
  }

  What what() {
    return what;
  }

  String found() {
    return found;
  }

  String expected() {
    return expected;
  }
}
