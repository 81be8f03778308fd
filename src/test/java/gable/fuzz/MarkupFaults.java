package gable.fuzz;

import gable.fuzz.Markup.Attribute;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Faults in the XML of one item: tags, attributes, text, encoding. */
final class MarkupFaults {

  private static final List<String> LOCALS =
      List.of(
          "model",
          "resources",
          "build",
          "object",
          "mesh",
          "vertices",
          "vertex",
          "triangles",
          "triangle",
          "components",
          "component",
          "item",
          "metadata",
          "metadatagroup",
          "basematerials",
          "base",
          "colorgroup",
          "color",
          "texture2dgroup",
          "tex2coord",
          "compositematerials",
          "composite",
          "multiproperties",
          "multi",
          "trianglesets",
          "triangleset",
          "ref",
          "refrange",
          "beamlattice",
          "beams",
          "beam",
          "slicestack",
          "booleanshape",
          "Relationship",
          "Override",
          "Default",
          "Types");

  private static final List<String> ATTRIBUTES =
      List.of(
          "id",
          "objectid",
          "pid",
          "pindex",
          "p1",
          "p2",
          "p3",
          "v1",
          "v2",
          "v3",
          "x",
          "y",
          "z",
          "transform",
          "type",
          "unit",
          "name",
          "path",
          "texid",
          "matid",
          "pids",
          "requiredextensions",
          "recommendedextensions",
          "slicestackid",
          "thumbnail",
          "xml:lang",
          "xml:space",
          "xmlns",
          "startindex",
          "endindex",
          "index",
          "Target",
          "TargetMode",
          "Id",
          "Type",
          "PartName");

  private final Markup markup;
  private final Chance chance;

  private MarkupFaults(Markup markup, Chance chance) {
    this.markup = markup;
    this.chance = chance;
  }

  /** The text with one fault more. */
  static String planted(String text, Chance chance) {
    if (chance.oneIn(12)) {
      return ofWhole(text, chance);
    }
    Markup markup = Markup.of(text);
    if (markup.pieces().isEmpty()) {
      return chance.of(Telling.PIECES);
    }
    new MarkupFaults(markup, chance).plant();
    return markup.text();
  }

  private static String ofWhole(String text, Chance chance) {
    return switch (chance.below(6)) {
      case 0 -> "\u00EF\u00BB\u00BF" + text;
      case 1 -> text.replace("UTF-8", chance.either("UTF-16", "ISO-8859-1", "utf-8", "", "x"));
      case 2 -> "\u00FF\u00FE" + text.replaceAll("(?s)(.)", "$1\0");
      case 3 -> text.replace("\n", chance.either("\r\n", "\r", ""));
      case 4 -> text.replace("\"", "'");
      default -> text.substring(0, chance.below(text.length() + 1));
    };
  }

  private void plant() {
    List<String> pieces = markup.pieces();
    int at = chance.below(pieces.size());
    switch (chance.below(14)) {
      case 0 -> pieces.remove(at);
      case 1 -> pieces.add(chance.below(pieces.size()), pieces.get(at));
      case 2 -> Collections.swap(pieces, at, chance.below(pieces.size()));
      case 3 -> pieces.add(at, chance.of(Telling.PIECES));
      case 4 -> insideText(at);
      case 5 -> repeatRange(at);
      case 6 -> removeRange(at);
      case 7 -> rename(at);
      case 8 -> addAttribute(at);
      case 9 -> prefix();
      default -> value();
    }
  }

  private void insideText(int at) {
    String piece = markup.pieces().get(at);
    int place = chance.below(piece.length() + 1);
    markup
        .pieces()
        .set(at, piece.substring(0, place) + chance.of(Telling.PIECES) + piece.substring(place));
  }

  private List<String> range(int at) {
    int count = 1 + chance.small(Math.min(40, markup.pieces().size() - at));
    return markup.pieces().subList(at, Math.min(markup.pieces().size(), at + count));
  }

  private void repeatRange(int at) {
    List<String> copy = List.copyOf(range(at));
    markup.pieces().addAll(chance.below(markup.pieces().size()), copy);
  }

  private void removeRange(int at) {
    range(at).clear();
  }

  private void rename(int at) {
    String piece = markup.pieces().get(at);
    markup.pieces().set(at, piece.replaceFirst("[\\w]+(?=[ />])", chance.of(LOCALS)));
  }

  private void addAttribute(int at) {
    String attribute = ' ' + chance.of(ATTRIBUTES) + "=\"" + telling() + '"';
    String piece = markup.pieces().get(at);
    markup.pieces().set(at, piece.replaceFirst("(?=/?>)", quoted(attribute)));
  }

  private static String quoted(String text) {
    return text.replace("\\", "\\\\").replace("$", "\\$");
  }

  private String telling() {
    return chance.of(
        switch (chance.below(5)) {
          case 0 -> Telling.NUMBERS;
          case 1 -> Telling.NAMES;
          case 2 -> Telling.TRANSFORMS;
          case 3 -> Telling.NAMESPACES;
          default -> Telling.INDICES;
        });
  }

  /** Gives the elements of one namespace a prefix, or takes it away, in some tags or in all. */
  private void prefix() {
    boolean all = chance.oneIn(2);
    for (int i = 0; i < markup.pieces().size(); i++) {
      if (all || chance.oneIn(10)) {
        String piece = markup.pieces().get(i);
        String other =
            piece.contains(":")
                ? piece.replaceFirst("(</?)\\w+:", "$1")
                : piece.replaceFirst("(</?)(?=\\w)", "$1c:");
        markup.pieces().set(i, other.replace("xmlns=", "xmlns:c="));
      }
    }
  }

  /** Another value for an attribute that stands there: a telling one, or one of its fellows'. */
  private void value() {
    List<Attribute> all = rareFirst();
    if (all.isEmpty()) {
      return;
    }
    Attribute attribute = chance.of(all);
    String value =
        switch (chance.below(4)) {
          case 0 -> chance.of(all).value();
          case 1 -> "\"";
          default -> telling();
        };
    markup.set(attribute, value);
  }

  /** Attributes of all tags but those of long lists, or of any tag. */
  private List<Attribute> rareFirst() {
    List<Attribute> all = new ArrayList<>();
    boolean rare = !chance.oneIn(4);
    for (int i = 0; i < markup.pieces().size(); i++) {
      String piece = markup.pieces().get(i);
      boolean list = piece.contains("vertex") || piece.contains("triangle ");
      if (!(rare && list)) {
        all.addAll(markup.attributes(i));
      }
    }
    return all;
  }
}
