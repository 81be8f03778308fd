package gable.pipeline;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Part;
import gable.opc.PartRoles;
import gable.opc.RelationshipTypes;
import java.util.ArrayList;
import java.util.List;

/**
 * Parts that a change of model parts may have made wrong, and what becomes of them. Pictures stay
 * and are named. Parts that nobody knows stay or go as the user wants (3MF Core 1.4, section 2.1.5:
 * they are assumed stale). Where such parts go, so do signatures over them, over the relationships
 * or the content types; objects in signed parts were not changed in the first place.
 */
final class Stale {

  private final List<String> dropped = new ArrayList<>();
  private final List<Notice> notices = new ArrayList<>();

  private Stale() {}

  /**
   * Looks for them.
   *
   * @param source the package before the change
   * @param changed names of the parts that are changed
   */
  static Stale of(OpcPackage source, List<String> changed, Settings.UnknownParts unknown)
      throws PackageException {
    PartRoles roles = PartRoles.of(source);
    Stale stale = new Stale();
    stale.pictures(source);
    stale.unknown(roles.unknownParts(), unknown);
    if (roles.isSigned()) {
      stale.signatures(roles, changed);
    }
    return stale;
  }

  /** Names of the parts that go. */
  List<String> dropped() {
    return List.copyOf(dropped);
  }

  /** What is to be said about those that stay and those that go. */
  List<Notice> notices() {
    return List.copyOf(notices);
  }

  private void pictures(OpcPackage source) {
    source.allRelationships().stream()
        .filter(relationship -> relationship.is(RelationshipTypes.THUMBNAIL))
        .flatMap(relationship -> relationship.part().stream())
        .distinct()
        .forEach(
            part ->
                say("thumbnail-stale", Notice.Level.NOTE, part, "the picture shows the old model"));
  }

  private void unknown(List<Part> parts, Settings.UnknownParts wish) {
    for (Part part : parts) {
      if (wish == Settings.UnknownParts.DROP) {
        dropped.add(part.name());
        say(
            "unknown-part-dropped",
            Notice.Level.NOTE,
            part.name(),
            "nothing that the standard knows refers to this part: it was dropped");
      } else {
        say(
            "unknown-part-kept",
            Notice.Level.NOTE,
            part.name(),
            "nothing that the standard knows refers to this part: it was kept, but may speak of the"
                + " model as it was (3MF Core 2.1.5); --unknown-parts drop leaves such parts out");
      }
    }
  }

  /** Relationships and content types change with every part that goes. */
  private void signatures(PartRoles roles, List<String> changed) {
    List<String> touched = new ArrayList<>(changed);
    touched.addAll(dropped);
    if (!dropped.isEmpty()) {
      touched.addAll(List.of("/_rels/.rels", "/[Content_Types].xml"));
    }
    if (touched.stream().noneMatch(roles::isSigned)) {
      return;
    }
    for (Part part : roles.signatureParts()) {
      dropped.add(part.name());
      say(
          "signature-dropped",
          Notice.Level.WARNING,
          part.name(),
          "a signature covers a part that was changed, so it no longer holds: it was dropped");
    }
  }

  private void say(String code, Notice.Level level, String part, String message) {
    notices.add(new Notice(code, level, part, message));
  }
}
