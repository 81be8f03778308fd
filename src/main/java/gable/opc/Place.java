package gable.opc;

/**
 * Where in a file something was found.
 *
 * @param part name of the part or ZIP item as it is written in the file, empty for the whole file
 * @param path steps from the outside to the inside joined by {@code /}, such as {@code
 *     model/resources/object 3/mesh/triangle 17}; empty when not known
 * @param line line in the part, from 1; 0 when not known
 * @param column column in that line, from 1; 0 when not known
 */
public record Place(String part, String path, int line, int column) {

  /** The file as a whole. */
  public static final Place FILE = new Place("", "", 0, 0);

  public Place {
    if (line < 0 || column < 0) {
      throw new IllegalArgumentException("no place: line " + line + ", column " + column);
    }
  }

  /** A part as a whole. */
  public static Place of(String part) {
    return new Place(part, "", 0, 0);
  }

  /** A spot in the text of a part. */
  public static Place of(String part, int line, int column) {
    return new Place(part, "", Math.max(line, 0), Math.max(column, 0));
  }

  /** The same place with a path. */
  public Place at(String elementPath) {
    return new Place(part, elementPath, line, column);
  }

  /** The same place seen from one level further out, which has the given name. */
  public Place within(String step) {
    return new Place(part, path.isEmpty() ? step : step + "/" + path, line, column);
  }

  /** The same place in the given part, if no part is known yet. */
  public Place inPart(String name) {
    return part.isEmpty() ? new Place(name, path, line, column) : this;
  }

  /** The place in words, empty for the whole file. */
  public String words() {
    StringBuilder words = new StringBuilder(Printable.text(part));
    if (!path.isEmpty()) {
      words.append(words.isEmpty() ? "" : ", ").append(Printable.text(path));
    }
    if (line > 0) {
      words.append(words.isEmpty() ? "line " : ", line ").append(line);
      words.append(column > 0 ? ", column " + column : "");
    }
    return words.toString();
  }
}
