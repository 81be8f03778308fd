package gable.opc;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What an edit means for the items of the archive: which get other bytes, which go and which come.
 * Relationships and content types follow from the parts that come and go.
 */
final class PartChanges {

  private final PackageParts contents;
  private final PackageEdit edit;
  private final Map<ZipItem, PartContent> replaced = new HashMap<>();
  private final Set<ZipItem> dropped = new HashSet<>();
  private final Set<String> droppedKeys = new HashSet<>();
  private final Map<String, PackageEdit.Addition> added = new LinkedHashMap<>();

  private PartChanges(PackageParts contents, PackageEdit edit) {
    this.contents = contents;
    this.edit = edit;
  }

  /**
   * Works the edit out.
   *
   * @throws IllegalArgumentException if the edit does not fit the package
   */
  static PartChanges of(PackageParts contents, PackageEdit edit) {
    PartChanges changes = new PartChanges(contents, edit);
    changes.dropParts();
    changes.replaceParts();
    changes.addParts();
    changes.spliceRelationships();
    changes.spliceTypes();
    return changes;
  }

  private void dropParts() {
    for (String name : edit.dropped()) {
      Part part = requirePart(name);
      require(!part.equals(contents.root()), "the root model part cannot be dropped");
      droppedKeys.add(PartNames.key(part.name()));
      dropped.add(contents.item(part.name()));
      contents.findItem(PartNames.relationships(part.name())).ifPresent(dropped::add);
    }
  }

  private void replaceParts() {
    edit.replaced()
        .forEach(
            (name, content) -> {
              ZipItem item = contents.item(requirePart(name).name());
              require(!dropped.contains(item), "part " + name + " is both dropped and replaced");
              replaced.put(item, content);
            });
  }

  private void addParts() {
    edit.added()
        .forEach(
            (name, addition) -> {
              Optional<ZipItem> old = contents.findItem(name);
              require(old.isEmpty(), "the package has a part " + name + " already");
              added.put(name, addition);
            });
  }

  private void spliceRelationships() {
    Map<String, List<PackageEdit.Link>> links = new LinkedHashMap<>();
    for (PackageEdit.Link link : edit.links()) {
      require(
          link.source().equals(PartNames.PACKAGE) || remains(link.source()),
          "no source " + link.source());
      require(remains(link.part()), "no target " + link.part());
      links.computeIfAbsent(PartNames.key(link.source()), k -> new ArrayList<>()).add(link);
    }
    for (Relationships old : contents.bySource()) {
      String key = PartNames.key(old.source());
      if (!droppedKeys.contains(key)) {
        splice(old, Optional.ofNullable(links.remove(key)).orElse(List.of()));
      }
    }
    links.values().forEach(this::addRelationships);
  }

  private void splice(Relationships old, List<PackageEdit.Link> links) {
    TextSplice splice = new TextSplice(old.text().text(), old.bound());
    Set<String> ids = new HashSet<>();
    for (int i = 0; i < old.list().size(); i++) {
      Relationship relationship = old.list().get(i);
      ids.add(relationship.id());
      if (relationship.part().map(PartNames::key).filter(droppedKeys::contains).isPresent()) {
        splice.remove(old.bound().relations.get(i));
      }
    }
    insert(splice, links, ids);
    if (!splice.isEmpty()) {
      byte[] bytes = old.text().encode(splice.result());
      replaced.put(contents.item(PartNames.relationships(old.source())), PartContent.of(bytes));
    }
  }

  private void addRelationships(List<PackageEdit.Link> links) {
    String source = links.get(0).source();
    XmlText empty =
        XmlText.utf8(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<Relationships xmlns=\""
                + Bound.RELATIONSHIPS
                + "\"/>");
    Bound.Relations root = new Bound.Relations();
    root.from = empty.text().indexOf("<Relationships");
    root.endTag = root.from;
    root.to = empty.text().length();
    TextSplice splice = new TextSplice(empty.text(), root);
    insert(splice, links, new HashSet<>());
    PartContent content = PartContent.of(empty.encode(splice.result()));
    String name = source.equals(PartNames.PACKAGE) ? source : spelled(source);
    added.put(
        PartNames.relationships(name),
        new PackageEdit.Addition(ContentTypes.RELATIONSHIPS, content));
  }

  private static void insert(TextSplice splice, List<PackageEdit.Link> links, Set<String> ids) {
    for (PackageEdit.Link link : links) {
      String id = PartNames.freshId(ids);
      ids.add(id);
      splice.insert("Relationship", "Target", link.part(), "Id", id, "Type", link.type());
    }
  }

  private void spliceTypes() {
    ContentTypes types = contents.types();
    TextSplice splice = new TextSplice(types.text().text(), types.bound());
    Set<String> stale = new HashSet<>();
    dropped.forEach(item -> stale.add(PartNames.key(PartNames.ofItem(item.name()))));
    added.forEach(
        (name, addition) -> {
          if (!types.of(name).equals(addition.contentType())) {
            stale.add(PartNames.key(name));
            splice.insert("Override", "PartName", name, "ContentType", addition.contentType());
          }
        });
    types.bound().overrides.stream()
        .filter(entry -> stale.contains(PartNames.key(entry.partName)))
        .forEach(splice::remove);
    if (!splice.isEmpty()) {
      ZipItem item = contents.item(PartNames.ofItem(ContentTypes.ITEM));
      replaced.put(item, PartContent.of(types.text().encode(splice.result())));
    }
  }

  private boolean remains(String part) {
    String key = PartNames.key(part);
    boolean kept = contents.find(part).isPresent() && !droppedKeys.contains(key);
    return kept || added.keySet().stream().anyMatch(name -> PartNames.key(name).equals(key));
  }

  private String spelled(String part) {
    return contents.find(part).map(Part::name).orElse(part);
  }

  private Part requirePart(String name) {
    return contents
        .find(name)
        .orElseThrow(() -> new IllegalArgumentException("the package has no part " + name));
  }

  private static void require(boolean condition, String otherwise) {
    if (!condition) {
      throw new IllegalArgumentException(otherwise);
    }
  }

  /** Whether the item goes. */
  boolean isDropped(ZipItem item) {
    return dropped.contains(item);
  }

  /** The new bytes of an item, empty if it keeps its own. */
  Optional<PartContent> replacement(ZipItem item) {
    return Optional.ofNullable(replaced.get(item));
  }

  /** New items by part name, in order. */
  Map<String, PackageEdit.Addition> added() {
    return added;
  }
}
