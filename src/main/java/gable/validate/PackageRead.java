package gable.validate;

import gable.opc.OpcPackage;
import gable.opc.Part;
import gable.opc.Relationship;
import gable.opc.Rule;
import gable.threemf.Names;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** All model parts of a package, and the way from a reference to what it means. */
final class PackageRead {

  /** What a reference means. */
  record Target(PartRead part, Resource resource) {}

  private final OpcPackage source;
  private final Set<String> encrypted;
  private final Findings findings;
  private final Map<String, PartRead> parts = new LinkedHashMap<>();
  private final Set<String> unread = new HashSet<>();

  PackageRead(OpcPackage source, Set<String> encrypted, Findings findings) {
    this.source = source;
    this.encrypted = encrypted;
    this.findings = findings;
  }

  void add(PartRead part) {
    parts.put(part.name(), part);
  }

  /** Leaves parts alone that nobody has read: what leads to them is not judged. */
  void leave(Set<String> names) {
    unread.addAll(names);
    unread.removeAll(parts.keySet());
  }

  /** Asks what goes across parts. The root part must have been read. */
  void finish() {
    BuildChecks build = new BuildChecks(this, findings);
    build.check();
    new ProductionChecks(this, findings).check();
    new SliceLinks(this, build, findings).check();
    new PictureChecks(this, findings).check();
    new ExtensionChecks(this, findings).check();
  }

  OpcPackage source() {
    return source;
  }

  List<PartRead> parts() {
    return List.copyOf(parts.values());
  }

  /** The parts whose XML could be read to the end. */
  List<PartRead> whole() {
    return parts.values().stream().filter(PartRead::isWhole).toList();
  }

  PartRead root() {
    return parts.values().iterator().next();
  }

  PartRead part(Element element) {
    return Optional.ofNullable(parts.get(element.part())).orElseThrow();
  }

  /** Parts that a part has a relationship of a type to. */
  Set<String> related(String from, String type) {
    return source.relationships(from).stream()
        .filter(relationship -> relationship.is(type))
        .map(Relationship::part)
        .flatMap(Optional::stream)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /**
   * The part that a path of an element means; nothing if there is none, which is reported, or if it
   * cannot be looked into.
   */
  Optional<PartRead> part(Element from, Optional<String> path) {
    if (path.isEmpty()) {
      return Optional.of(part(from));
    }
    boolean slices = from.is(Names.SLICE, "sliceref"); // their depth is a rule of its own
    if (!slices && !part(from).model().isRoot()) {
      String found = "the path '" + path.get() + "' in a part that is not the root";
      findings.add(ExtensionRules.DEEP_PATH, from, found, "paths in the root part only");
    }
    Optional<String> name = source.part(path.get().strip()).map(Part::name);
    if (name.filter(encrypted::contains).isPresent()) {
      String found = "the encrypted part " + path.get() + "; its objects cannot be checked";
      findings.add(ExtensionRules.ENCRYPTED, from, found, "a part that can be read");
      return Optional.empty();
    }
    if (name.filter(unread::contains).isPresent()) {
      return Optional.empty();
    }
    Optional<PartRead> part = name.map(parts::get);
    if (part.isEmpty()) {
      String found = "the path '" + path.get() + '\'';
      String expected = "a model part that the root part has a relationship to";
      findings.add(ExtensionRules.PATH, from, found, expected);
    }
    return part.filter(PartRead::isWhole);
  }

  /**
   * The resource that an element means; nothing if there is none, which is reported.
   *
   * @param missing the rule that is broken then
   */
  Optional<Target> target(Element from, Optional<String> path, int id, Rule missing) {
    if (id < 1) {
      return Optional.empty(); // the table has found it
    }
    Optional<PartRead> part = part(from, path);
    Optional<Target> target =
        part.flatMap(each -> each.model().resource(id).map(found -> new Target(each, found)));
    if (part.isPresent() && target.isEmpty()) {
      String found = "id " + id + " of " + part.get().name() + ", which there is not";
      findings.add(missing, from, found, "the id of a resource");
    }
    return target;
  }
}
