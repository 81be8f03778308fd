package gable.pipeline;

import gable.opc.OpcPackage;
import gable.opc.Part;
import gable.opc.Relationship;
import gable.opc.RelationshipTypes;
import gable.threemf.ModelPackage;
import gable.threemf.ModelPart;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Parts that a change of the model may have made wrong. Source: 3MF Core 1.4, section 2.1.5: a part
 * that nothing known covers and that no MustPreserve relationship protects is assumed stale.
 *
 * @param dropped names of the parts that go
 * @param notices what is to be said about those that stay and those that go
 */
record Stale(List<String> dropped, List<Notice> notices) {

  private static final Set<String> KNOWN =
      Set.of(
          RelationshipTypes.MODEL,
          RelationshipTypes.TEXTURE,
          RelationshipTypes.PRINT_TICKET,
          RelationshipTypes.THUMBNAIL,
          RelationshipTypes.CORE_PROPERTIES,
          RelationshipTypes.MUST_PRESERVE,
          RelationshipTypes.SIGNATURE_ORIGIN,
          RelationshipTypes.SIGNATURE,
          RelationshipTypes.CERTIFICATE,
          RelationshipTypes.KEY_STORE,
          RelationshipTypes.ENCRYPTED_FILE);

  static Stale of(OpcPackage source, ModelPackage model, Settings.UnknownParts unknown) {
    List<String> dropped = new ArrayList<>();
    List<Notice> notices = new ArrayList<>();
    Set<String> thumbnails = new HashSet<>();
    Set<String> covered = new HashSet<>();
    for (Relationship relationship : source.allRelationships()) {
      if (relationship.is(RelationshipTypes.THUMBNAIL)) {
        relationship.part().ifPresent(thumbnails::add);
      }
      if (KNOWN.contains(relationship.type())) {
        relationship.part().ifPresent(covered::add);
      }
    }
    model.parts().stream().map(ModelPart::name).forEach(covered::add);
    for (Part part : source.parts()) {
      if (thumbnails.contains(part.name())) {
        notices.add(kept("thumbnail-stale", part, "the picture still shows the model as it was"));
      } else if (!covered.contains(part.name()) && !part.contentType().isEmpty()) {
        boolean drop = unknown == Settings.UnknownParts.DROP;
        if (drop) {
          dropped.add(part.name());
        }
        notices.add(
            drop
                ? kept("unknown-part-dropped", part, "nothing known covers this part: dropped")
                : kept(
                    "unknown-part-kept",
                    part,
                    "nothing known covers this part: it was kept, but may speak of the model as it"
                        + " was (3MF Core 2.1.5); --unknown-parts drop leaves such parts out"));
      }
    }
    return new Stale(dropped, notices);
  }

  private static Notice kept(String code, Part part, String message) {
    return new Notice(code, Notice.Level.NOTE, part.name(), message);
  }
}
