package gable.threemf;

import static javax.xml.stream.XMLStreamConstants.END_ELEMENT;
import static javax.xml.stream.XMLStreamConstants.START_ELEMENT;

import java.util.Optional;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * The entries of a property group or of a triangle set, as numbers in one array.
 *
 * <p>Of a base material nothing; of a colour red, green, blue and alpha from 0 to 255; of a texture
 * coordinate u and v; of a composite its values; of a multi its indices; of a triangle set's
 * reference the first and the last triangle.
 */
final class Entries {

  private static final Pattern COLOR_VALUE = Pattern.compile("#([0-9A-Fa-f]{6}|[0-9A-Fa-f]{8})");

  /** What the entries are. */
  enum Kind {
    BASE(Names.CORE, "basematerials", "base"),
    COLOR(Names.MATERIAL, "colorgroup", "color"),
    TEXTURE(Names.MATERIAL, "texture2dgroup", "tex2coord"),
    COMPOSITE(Names.MATERIAL, "compositematerials", "composite"),
    MULTI(Names.MATERIAL, "multiproperties", "multi"),
    SET(Names.SETS, "triangleset", "ref");

    private final String namespace;
    private final String group;
    private final String entry;

    Kind(String namespace, String group, String entry) {
      this.namespace = namespace;
      this.group = group;
      this.entry = entry;
    }

    /** Local name of an entry. */
    String entry() {
      return entry;
    }

    static Optional<Kind> of(String namespace, String local) {
      for (Kind kind : values()) {
        if (kind.group.equals(local) && kind.namespace.equals(namespace)) {
          return Optional.of(kind);
        }
      }
      return Optional.empty();
    }
  }

  private final Kind kind;
  private final Growing.Doubles values = new Growing.Doubles();
  private final Growing.Ints ends = new Growing.Ints();
  private int faulty = -1;

  private Entries(Kind kind) {
    this.kind = kind;
  }

  /** Reads the group whose start tag is the current event, and stops at its end tag. */
  static Entries read(SkeletonStream events, Kind kind) throws XMLStreamException {
    Entries entries = new Entries(kind);
    for (int depth = 0; depth >= 0; ) {
      int event = events.advance();
      if (event == START_ELEMENT) {
        if (depth == 0 && kind.namespace.equals(events.getNamespaceURI())) {
          entries.add(events);
        }
        depth++;
      } else if (event == END_ELEMENT) {
        depth--;
      }
    }
    return entries;
  }

  private void add(XMLStreamReader entry) {
    boolean sound =
        switch (kind) {
          case BASE -> true;
          case COLOR -> color(value(entry, "color"));
          case TEXTURE -> numbers(value(entry, "u") + ' ' + value(entry, "v"), 2);
          case COMPOSITE -> numbers(value(entry, "values"), 1);
          case MULTI -> numbers(value(entry, "pindices"), 1);
          case SET -> range(entry);
        };
    if (!sound && faulty < 0) {
      faulty = ends.size();
    }
    ends.add(values.size());
  }

  private boolean range(XMLStreamReader entry) {
    boolean single = entry.getLocalName().equals("ref");
    int first = NumberText.index(value(entry, single ? "index" : "startindex"));
    int last = single ? first : NumberText.index(value(entry, "endindex"));
    values.add(first);
    values.add(last);
    return first >= 0 && last >= first;
  }

  private boolean color(String text) {
    String hex = text.strip();
    boolean sound = COLOR_VALUE.matcher(hex).matches();
    for (int k = 0; k < 4; k++) {
      boolean given = sound && 3 + 2 * k <= hex.length();
      values.add(given ? Integer.parseInt(hex.substring(1 + 2 * k, 3 + 2 * k), 16) : 255);
    }
    return sound;
  }

  private boolean numbers(String text, int least) {
    int count = 0;
    boolean sound = true;
    for (String part : NumberText.words(text)) {
      double number = NumberText.number(part);
      sound &= !Double.isNaN(number);
      values.add(Double.isNaN(number) ? 0 : number);
      count++;
    }
    return sound && count >= least;
  }

  private static String value(XMLStreamReader entry, String name) {
    String value = entry.getAttributeValue("", name);
    return value == null ? "" : value;
  }

  Kind kind() {
    return kind;
  }

  /** Number of entries. */
  int count() {
    return ends.size();
  }

  /** First entry that could not be read, or -1. */
  int faulty() {
    return faulty;
  }

  /** How many numbers an entry has. */
  int size(int entry) {
    return ends.get(entry) - start(entry);
  }

  /** A number of an entry; 0 past its end, as the materials specification has it for indices. */
  double value(int entry, int index) {
    return index < size(entry) ? values.get(start(entry) + index) : 0;
  }

  private int start(int entry) {
    return entry == 0 ? 0 : ends.get(entry - 1);
  }
}
