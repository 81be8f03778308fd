package gable.opc;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What an archive's items mean: parts, their types and relationships. Items that are folders or
 * hold types or relationships are not among the parts, but are kept when the package is written.
 */
final class PackageParts {

  private static final String TYPES_KEY = PartNames.key(PartNames.ofItem(ContentTypes.ITEM));

  private final ZipArchive archive;
  private final OpcLimits.Xml limits;
  private final List<Problem> notices;
  private final Map<String, ZipItem> items = new LinkedHashMap<>();
  private final Map<String, Part> parts = new LinkedHashMap<>();
  private final Map<String, Relationships> relationships = new LinkedHashMap<>();
  private final ContentTypes types;

  private PackageParts(ZipArchive archive, OpcLimits.Xml limits, List<Problem> notices)
      throws PackageException {
    this.archive = archive;
    this.limits = limits;
    this.notices = notices;
    index();
    types = readTypes();
    listParts();
    readRelationships();
  }

  /** Reads types and relationships; breaches that do not stop reading go to {@code notices}. */
  static PackageParts of(ZipArchive archive, OpcLimits limits, List<Problem> notices)
      throws PackageException {
    PackageParts contents = new PackageParts(archive, limits.xml(), notices);
    PackageChecks.check(contents, notices);
    return contents;
  }

  private void index() throws PackageException {
    for (ZipItem item : archive.items()) {
      String key = PartNames.key(PartNames.ofItem(item.name()));
      ZipItem other = items.putIfAbsent(key, item);
      if (other != null) {
        boolean same = other.name().equals(item.name());
        throw new PackageException(
            new Problem(
                same ? ZipRules.DUPLICATE : OpcRules.EQUAL_NAMES,
                Place.of(item.name()),
                same
                    ? "two items have this name"
                    : "the item '" + other.name() + "' has an equal name",
                "names that differ by more than case and escapes"));
      }
      if (PartNames.isPiece(PartNames.ofItem(item.name()))) {
        throw new PackageException(
            new Problem(
                OpcRules.PIECES, Place.of(item.name()), "it is a piece of a part", "whole parts"));
      }
    }
  }

  private ContentTypes readTypes() throws PackageException {
    ZipItem item = items.get(TYPES_KEY);
    if (item == null) {
      throw new PackageException(
          new Problem(
              OpcRules.NO_TYPES,
              Place.FILE,
              "the package has no [Content_Types].xml",
              "that item, which says what each part is"));
    }
    return ContentTypes.read(text(item), limits, notices);
  }

  private XmlText text(ZipItem item) throws PackageException {
    return XmlText.decode(item.name(), archive.bytes(item, limits.bytes(), ZipRules.BIG_XML));
  }

  private void listParts() {
    items.forEach(
        (key, item) -> {
          String name = PartNames.ofItem(item.name());
          boolean special = key.equals(TYPES_KEY) || PartNames.isRelationships(name);
          if (!item.isFolder() && !special) {
            parts.put(key, new Part(name, types.of(name), item.size()));
          }
        });
  }

  private void readRelationships() throws PackageException {
    int count = 0;
    for (ZipItem item : archive.items()) {
      String name = PartNames.ofItem(item.name());
      if (!PartNames.isRelationships(name)) {
        continue;
      }
      String source = PartNames.source(name);
      Relationships read =
          Relationships.read(source, text(item), n -> find(n).map(Part::name), limits, notices);
      relationships.put(PartNames.key(source), read);
      count += read.list().size();
      if (count > limits.relationships()) {
        throw new PackageException(
            new Problem(
                OpcRules.MANY_RELATIONS,
                Place.of(item.name()),
                "the package has more than " + limits.relationships() + " relationships",
                "at most " + limits.relationships()));
      }
    }
  }

  /** All parts in the order of the archive. */
  List<Part> all() {
    return List.copyOf(parts.values());
  }

  /** All items in the order of the archive, folders and relationships parts among them. */
  Collection<ZipItem> items() {
    return items.values();
  }

  /** The part that a name means. */
  Optional<Part> find(String name) {
    return Optional.ofNullable(parts.get(PartNames.key(name)));
  }

  /** The item that a name means, which may be a relationships part. */
  Optional<ZipItem> findItem(String name) {
    return Optional.ofNullable(items.get(PartNames.key(name)));
  }

  /** The item of a part that must be there. */
  ZipItem item(String name) {
    return findItem(name)
        .orElseThrow(() -> new IllegalArgumentException("the package has no part " + name));
  }

  /** The part at the only StartPart relationship; the checks have made sure that there is one. */
  Part root() {
    return fromPackage(RelationshipTypes.MODEL).get(0).part().flatMap(this::find).orElseThrow();
  }

  /** Relationships of one type that start from the package. */
  List<Relationship> fromPackage(String type) {
    return relationships(PartNames.PACKAGE).map(Relationships::list).orElse(List.of()).stream()
        .filter(r -> r.is(type))
        .toList();
  }

  /** Relationships of a part, or of the package. */
  Optional<Relationships> relationships(String source) {
    return Optional.ofNullable(relationships.get(PartNames.key(source)));
  }

  /** The relationships of each source that has some. */
  Collection<Relationships> bySource() {
    return relationships.values();
  }

  /** All relationships. */
  List<Relationship> allRelationships() {
    List<Relationship> all = new ArrayList<>();
    relationships.values().forEach(r -> all.addAll(r.list()));
    return all;
  }

  /** Content types, for splicing. */
  ContentTypes types() {
    return types;
  }
}
