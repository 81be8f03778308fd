package gable.opc;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Content types of the parts (OPC 9.1.2): an entry for the part's own name, else one for its
 * extension. Names and extensions are compared without regard to case.
 */
final class ContentTypes {

  /** Name of the item that holds them; it is no part. */
  static final String ITEM = "[Content_Types].xml";

  /** Content type of relationships parts. */
  static final String RELATIONSHIPS = "application/vnd.openxmlformats-package.relationships+xml";

  private final XmlText text;
  private final Bound.Types bound;
  private final Map<String, String> byName = new HashMap<>();
  private final Map<String, String> byExtension = new HashMap<>();

  private ContentTypes(XmlText text, Bound.Types bound) {
    this.text = text;
    this.bound = bound;
  }

  /** Reads the content types; breaches go to {@code notices}. */
  static ContentTypes read(XmlText text, OpcLimits.Xml limits, List<Problem> notices)
      throws PackageException {
    Bound.Types bound = OpcXml.read(text, Bound.Types.class, limits, notices);
    ContentTypes types = new ContentTypes(text, bound);
    for (Bound.ExtensionType entry : bound.defaults) {
      types
          .put(types.byExtension, PartNames.lower(entry.extension), entry.contentType)
          .ifPresent(fault -> notices.add(fault.at(entry.place)));
    }
    Set<String> names = new HashSet<>();
    for (Bound.NamedType entry : bound.overrides) {
      types
          .put(types.byName, PartNames.key(entry.partName), entry.contentType)
          .ifPresent(fault -> notices.add(fault.at(entry.place)));
      if (names.add(entry.partName) && !entry.partName.startsWith("/")) {
        notices.add(
            new Problem(
                OpcRules.TYPE_NAME,
                entry.place,
                "the part name '" + entry.partName + "' of an Override lacks its slash",
                "a name that starts with a slash"));
      }
    }
    return types;
  }

  private Optional<Problem> put(Map<String, String> types, String key, String type) {
    if (key.isEmpty() || type.isEmpty()) {
      return Optional.of(
          new Problem(
              OpcRules.TYPE_ENTRY,
              Place.FILE,
              "an entry lacks its name, extension or content type",
              "both attributes"));
    }
    if (types.putIfAbsent(key, type) != null) {
      return Optional.of(
          new Problem(
              OpcRules.TYPE_TWICE, Place.FILE, "'" + key + "' has a second entry", "one entry"));
    }
    return Optional.empty();
  }

  /** Content type of the part; empty if none is given. */
  String of(String part) {
    String own = byName.get(PartNames.key(part));
    return own != null ? own : byExtension.getOrDefault(PartNames.extension(part), "");
  }

  /** The text, for splicing. */
  XmlText text() {
    return text;
  }

  /** The elements with their places, for splicing. */
  Bound.Types bound() {
    return bound;
  }
}
