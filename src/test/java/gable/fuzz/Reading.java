package gable.fuzz;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import org.xml.sax.Attributes;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * The meshes of a package, read by the platform's own archive and XML readers, which share nothing
 * with those of the program. Source: 3MF Core 1.4, chapter 4.
 */
final class Reading extends DefaultHandler {

  private static final String CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
  private static final String OBJECT = "/model/resources/object";

  private final Map<Integer, Surface> surfaces = new HashMap<>();
  private final Deque<String> path = new ArrayDeque<>(List.of(""));
  private final List<Double> xyz = new ArrayList<>();
  private final List<Integer> corners = new ArrayList<>();
  private int object;
  private boolean sound;
  private boolean model;

  private Reading() {}

  /**
   * Readable meshes by object id, of each item that is well-formed and holds a model, by name of
   * the item.
   */
  static Map<String, Map<Integer, Surface>> of(Draft draft) throws IOException {
    Map<String, Map<Integer, Surface>> all = new HashMap<>();
    for (Draft.Item item : draft.items()) {
      if (item.content().contains("model")) {
        surfaces(Text.bytes(narrowed(item.content())))
            .ifPresent(found -> all.put(item.name(), found));
      }
    }
    return all;
  }

  /**
   * Since its fifth edition XML 1.0 takes characters beyond 16 bits in names (2.3); the platform's
   * reader still refuses them. No mesh needs one. Each stands here as the four bytes of UTF-8.
   */
  private static String narrowed(String text) {
    return text.replaceAll("[\u00F0-\u00F3][\u0080-\u00BF]{3}", "x");
  }

  private static Optional<Map<Integer, Surface>> surfaces(byte[] content) throws IOException {
    Reading reading = new Reading();
    try {
      SAXParserFactory factory = SAXParserFactory.newDefaultNSInstance();
      factory.newSAXParser().parse(new ByteArrayInputStream(content), reading);
      return reading.model ? Optional.of(reading.surfaces) : Optional.empty();
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("every platform has a parser", e);
    } catch (SAXException e) {
      return Optional.empty();
    }
  }

  @Override
  public void startElement(String space, String local, String name, Attributes attributes) {
    String here = path.element() + '/' + (space.equals(CORE) ? local : "?");
    path.push(here);
    try {
      switch (here) {
        case "/model" -> model = true;
        case OBJECT -> start(attributes);
        case OBJECT + "/mesh/vertices/vertex" -> vertex(attributes);
        case OBJECT + "/mesh/triangles/triangle" -> triangle(attributes);
        default -> {}
      }
    } catch (NumberFormatException | NullPointerException e) {
      sound = false; // a number that is missing or none: the mesh is not readable
    }
  }

  private void start(Attributes attributes) {
    xyz.clear();
    corners.clear();
    sound = true;
    object = Integer.parseInt(attributes.getValue("id").strip());
  }

  private void vertex(Attributes attributes) {
    for (String axis : List.of("x", "y", "z")) {
      xyz.add(Double.parseDouble(attributes.getValue(axis)));
    }
  }

  private void triangle(Attributes attributes) {
    for (String corner : List.of("v1", "v2", "v3")) {
      corners.add(Integer.parseInt(attributes.getValue(corner).strip()));
    }
  }

  @Override
  public void endElement(String space, String local, String name) {
    if (path.pop().equals(OBJECT)) {
      int vertices = xyz.size() / 3;
      sound &= !corners.isEmpty() && corners.stream().allMatch(c -> c >= 0 && c < vertices);
      sound &= xyz.stream().allMatch(Double::isFinite);
      if (sound) {
        surfaces.put(
            object,
            new Surface(
                xyz.stream().mapToDouble(Double::doubleValue).toArray(),
                corners.stream().mapToInt(Integer::intValue).toArray()));
      }
    }
  }

  @Override
  public org.xml.sax.InputSource resolveEntity(String publicId, String systemId)
      throws SAXException {
    throw new SAXException("something outside the file is asked for: " + systemId);
  }
}
