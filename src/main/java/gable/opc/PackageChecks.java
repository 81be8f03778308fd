package gable.opc;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What can be said about a package once its parts and relationships are known. */
final class PackageChecks {

  private final PackageParts contents;
  private final List<Problem> found;

  private PackageChecks(PackageParts contents, List<Problem> found) {
    this.contents = contents;
    this.found = found;
  }

  /** Adds the breaches to {@code found}. */
  static void check(PackageParts contents, List<Problem> found) {
    PackageChecks checks = new PackageChecks(contents, found);
    checks.checkNames();
    checks.checkSources();
    checks.checkStart();
    checks.checkTickets();
    checks.checkCoreProperties();
  }

  private void checkNames() {
    Set<String> keys = new HashSet<>();
    contents.all().forEach(part -> keys.add(PartNames.key(part.name())));
    for (Part part : contents.all()) {
      Place place = place(part.name());
      String key = PartNames.key(part.name());
      for (int at = key.indexOf('/', 1); at > 0; at = key.indexOf('/', at + 1)) {
        if (keys.contains(key.substring(0, at))) {
          report(
              OpcRules.NESTED_NAMES,
              place,
              "the part '" + part.name().substring(0, at) + "' has the name of its folder",
              "no part name that continues another");
        }
      }
      PartNames.fault(part.name())
          .ifPresent(
              fault ->
                  report(
                      OpcRules.PART_NAME,
                      place,
                      "the part name is not valid: " + fault,
                      "a valid part name"));
      if (part.contentType().isEmpty()) {
        report(OpcRules.NO_TYPE, place, "it has no content type", "an entry for it");
      }
    }
  }

  private void checkSources() {
    for (Relationships relationships : contents.bySource()) {
      String source = relationships.source();
      String part = relationships.text().part();
      if (PartNames.isRelationships(source)) {
        report(
            OpcRules.RELATION_OF_RELATIONS,
            Place.of(part),
            "a relationships part has relationships of its own",
            "relationships of parts only");
      } else if (!source.endsWith("/") && contents.find(source).isEmpty()) {
        report(
            OpcRules.NO_SOURCE,
            Place.of(part),
            "it holds relationships of '" + source + "', which is not in the package",
            "the part that it belongs to");
      }
    }
  }

  private void checkStart() {
    List<Relationship> starts = contents.fromPackage(RelationshipTypes.MODEL);
    if (starts.isEmpty()) {
      report(
          OpcRules.NO_START,
          Place.of("_rels/.rels"),
          "the package has no StartPart relationship, so no model",
          "one relationship of the type " + RelationshipTypes.MODEL);
    } else if (starts.size() > 1) {
      report(
          OpcRules.TWO_STARTS,
          starts.get(1).place(),
          "the package has " + starts.size() + " StartPart relationships",
          "one");
    } else {
      checkStart(starts.get(0));
    }
  }

  private void checkStart(Relationship start) {
    if (start.external()) {
      report(
          OpcRules.START_OUTSIDE,
          start.place(),
          "the model '" + start.target() + "' lies outside the package",
          "a model inside");
    }
    Optional<Part> part = start.part().flatMap(contents::find);
    String type = part.map(Part::contentType).orElse(Part.MODEL_TYPE);
    if (!type.equalsIgnoreCase(Part.MODEL_TYPE)) {
      report(
          OpcRules.START_TYPE,
          place(part.orElseThrow().name()),
          "the model part has "
              + (type.isEmpty() ? "no content type" : "the content type '" + type + "'"),
          Part.MODEL_TYPE);
    }
  }

  private void checkTickets() {
    Map<String, Integer> tickets = new HashMap<>();
    for (Relationship relationship : contents.allRelationships()) {
      if (relationship.is(RelationshipTypes.PRINT_TICKET)
          && tickets.merge(PartNames.key(relationship.source()), 1, Integer::sum) == 2) {
        report(
            OpcRules.TWO_TICKETS,
            relationship.place(),
            "'" + relationship.source() + "' has a second print ticket",
            "at most one");
      }
    }
  }

  private void checkCoreProperties() {
    List<Relationship> properties = contents.fromPackage(RelationshipTypes.CORE_PROPERTIES);
    if (properties.size() > 1) {
      report(
          OpcRules.TWO_CORE_PROPERTIES,
          properties.get(1).place(),
          "the package has a second core properties relationship",
          "at most one");
    }
  }

  private void report(Rule rule, Place place, String what, String expected) {
    found.add(new Problem(rule, place, what, expected));
  }

  private static Place place(String part) {
    return Place.of(part.substring(1));
  }
}
