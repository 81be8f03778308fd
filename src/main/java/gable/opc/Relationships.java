package gable.opc;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;

/** The relationships that start from one part or from the package (OPC 8.3). */
final class Relationships {

  private static final Pattern NCNAME = Pattern.compile("[\\p{L}_][\\p{L}\\p{N}\\p{M}._\\-·]*");

  private final String source;
  private final XmlText text;
  private final Bound.Relations bound;
  private final List<Relationship> list = new ArrayList<>();

  private Relationships(String source, XmlText text, Bound.Relations bound) {
    this.source = source;
    this.text = text;
    this.bound = bound;
  }

  /**
   * Reads a relationships part.
   *
   * @param source the part that they start from, {@code /} for the package
   * @param parts finds the part that a name means
   * @param notices where breaches go
   */
  static Relationships read(
      String source,
      XmlText text,
      Function<String, Optional<String>> parts,
      OpcLimits.Xml limits,
      List<Problem> notices)
      throws PackageException {
    Bound.Relations bound = OpcXml.read(text, Bound.Relations.class, limits, notices);
    Relationships read = new Relationships(source, text, bound);
    read.checkIds(notices);
    for (Bound.Relation relation : bound.relations) {
      read.add(relation, parts, notices);
    }
    read.checkTwice(notices);
    return read;
  }

  private void checkIds(List<Problem> notices) {
    Set<String> ids = new HashSet<>();
    for (Bound.Relation relation : bound.relations) {
      if (relation.id.isEmpty() || relation.type.isEmpty()) {
        notices.add(
            new Problem(
                OpcRules.RELATION,
                relation.place,
                "a relationship lacks its Id or its Type",
                "Id, Type and Target"));
      } else if (!ids.add(relation.id)) {
        notices.add(
            new Problem(
                OpcRules.RELATION_ID,
                relation.place,
                "the Id '" + relation.id + "' occurs a second time",
                "an Id of its own"));
      } else if (!NCNAME.matcher(relation.id).matches()) {
        notices.add(
            new Problem(
                OpcRules.ODD_ID,
                relation.place,
                "the Id '" + relation.id + "' is not an XML name",
                "a letter or underscore first, no blanks or colons"));
      }
    }
  }

  private void add(
      Bound.Relation relation, Function<String, Optional<String>> parts, List<Problem> notices) {
    boolean external = relation.targetMode.equals("External");
    if (!external && !relation.targetMode.equals("Internal")) {
      notices.add(
          new Problem(
              OpcRules.RELATION,
              relation.place,
              "TargetMode is '" + relation.targetMode + "'",
              "Internal or External"));
    }
    boolean outside = external || PartNames.hasScheme(relation.target);
    Optional<String> name = outside ? Optional.empty() : PartNames.resolve(source, relation.target);
    Optional<String> part = name.flatMap(parts);
    list.add(
        new Relationship(
            source, relation.id, relation.type, relation.target, outside, part, relation.place));
    if (outside) {
      notices.add(target(OpcRules.OUTSIDE, relation, "lies outside the package; not fetched"));
    } else if (name.isEmpty()) {
      notices.add(target(OpcRules.ABOVE_ROOT, relation, "leads above the root of the package"));
    } else if (part.isEmpty()) {
      notices.add(target(dangling(relation.type), relation, "is not in the package"));
    }
  }

  /** Who has no use for a target that is missing may go on without it (3MF Core 2.1.1). */
  private static Rule dangling(String type) {
    Set<String> needed =
        Set.of(
            RelationshipTypes.MODEL, RelationshipTypes.PRINT_TICKET, RelationshipTypes.THUMBNAIL);
    return needed.contains(type) ? OpcRules.DANGLING_NEEDED : OpcRules.DANGLING;
  }

  private static Problem target(Rule rule, Bound.Relation relation, String found) {
    return new Problem(
        rule,
        relation.place,
        "the target '" + relation.target + "' of relationship '" + relation.id + "' " + found,
        "a part of this package");
  }

  private void checkTwice(List<Problem> notices) {
    Set<List<String>> seen = new HashSet<>();
    for (Relationship relationship : list) {
      String part = relationship.part().orElse(relationship.target());
      if (!seen.add(List.of(relationship.type(), part))) {
        notices.add(
            new Problem(
                OpcRules.TWICE,
                relationship.place(),
                "a second relationship of one type leads to '" + part + "'",
                "one"));
      }
    }
  }

  /** The part that they start from, {@code /} for the package. */
  String source() {
    return source;
  }

  /** The relationships in the order of the file. */
  List<Relationship> list() {
    return List.copyOf(list);
  }

  /** The text, for splicing. */
  XmlText text() {
    return text;
  }

  /** The elements with their places, in the order of {@link #list}, for splicing. */
  Bound.Relations bound() {
    return bound;
  }
}
