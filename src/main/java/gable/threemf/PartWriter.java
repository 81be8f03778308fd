package gable.threemf;

import gable.opc.Problem;
import gable.opc.Rule;
import gable.threemf.Elements.Span;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The splices of one part while edits are written into it. */
final class PartWriter {

  private static final String UUID = "UUID";

  private final ModelPart part;
  private final byte[] text;
  private final ByteSplices splices;
  private final PropertyWriter properties;
  private final Set<Integer> ids;
  private final List<Problem> notices = new ArrayList<>();

  PartWriter(ModelPart part) {
    this.part = part;
    this.text = part.bytes();
    this.splices = new ByteSplices(text);
    this.properties = new PropertyWriter(part);
    this.ids = new HashSet<>(part.facts().ids());
  }

  /** The splices of the part itself; a clone has its own. */
  ByteSplices splices() {
    return splices;
  }

  ByteSplices forClone() {
    return new ByteSplices(text);
  }

  /** What somebody should know. */
  List<Problem> notices() {
    return notices;
  }

  /** An id that no resource of the part has: the highest and one, or the lowest free one. */
  int newId() {
    int highest = ids.stream().mapToInt(Integer::intValue).max().orElse(0);
    int id = highest < Integer.MAX_VALUE ? highest + 1 : 1;
    while (ids.contains(id)) {
      id++;
    }
    ids.add(id);
    return id;
  }

  /** Writes an edit of a mesh. */
  void mesh(ObjectEdit edit, ByteSplices target) {
    MeshWriter writer = new MeshWriter(text, edit, target, properties);
    writer.write();
    if (writer.borrowed() > 0) {
      note(
          edit,
          ModelRules.BORROWED,
          writer.borrowed() + " new triangles on new faces",
          "a property for them, which they have from the triangle beside them");
    }
    if (!writer.foreign().isEmpty()) {
      note(
          edit,
          ModelRules.COPIED,
          "attributes " + String.join(", ", writer.foreign()) + " of an extension",
          "copies on the triangles inside of theirs");
    }
    if (!writer.nameless().isEmpty()) {
      note(
          edit,
          ModelRules.NAMELESS,
          "attributes " + String.join(", ", writer.nameless()) + " on triangles that were replaced",
          "attributes of the specification, or the prefix of an extension");
    }
  }

  private void note(ObjectEdit edit, Rule rule, String found, String expected) {
    String path = "model/resources/object " + edit.object().id() + "/mesh";
    notices.add(part.facts().at(rule, edit.object().head().number(), path, found, expected));
  }

  /** Gives an element another value of an attribute without a prefix. */
  void attribute(int number, String name, int value, ByteSplices target) {
    TagText tag = TagText.at(text, part.facts().elements().span(number).start());
    tag.attribute(name)
        .ifPresent(each -> target.replace(each.value(), each.end(), Integer.toString(value)));
  }

  /** Gives an element a new UUID made from the old one, if it has one. */
  void uuid(int number, String key, ByteSplices target) {
    TagText tag = TagText.at(text, part.facts().elements().span(number).start());
    for (TagText.Attribute each : tag.attributes()) {
      int colon = each.name().indexOf(':');
      if (colon > 0
          && each.name().substring(colon + 1).equals(UUID)
          && part.facts().isProduction(each.name().substring(0, colon))) {
        String old = part.facts().text().text(each.value(), each.end());
        target.replace(each.value(), each.end(), ChangeKey.uuid(old, key));
      }
    }
  }

  /** Puts a changed copy of an object behind it. */
  void insertClone(ModelObject object, ByteSplices clone) {
    Span span = part.facts().elements().span(object.head().number());
    int blank = span.start();
    while (blank > 0 && TagScanner.isSpace(text[blank - 1])) {
      blank--;
    }
    byte[] separator = Arrays.copyOfRange(text, blank, span.start());
    splices.replace(span.end(), span.end(), separator);
    splices.replace(span.end(), span.end(), clone.content(span.start(), span.end()).toBytes());
  }

  /** The new content, if anything changed; nothing may be written after. */
  Optional<SplicedPart> done() {
    properties.write(splices);
    return splices.isEmpty()
        ? Optional.empty()
        : Optional.of(new SplicedPart(part.name(), splices.content(0, text.length)));
  }
}
