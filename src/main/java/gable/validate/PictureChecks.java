package gable.validate;

import gable.opc.Part;
import gable.opc.RelationshipTypes;
import gable.opc.Rule;
import java.util.Optional;
import java.util.Set;

/**
 * Textures, displacement maps, image sheets and thumbnails: parts that a model names by path.
 * Source: core specification 1.4, sections 2.1.3 and 4, materials 6, displacement 3.1, volumetric
 * 4.2.
 */
final class PictureChecks {

  private final PackageRead all;
  private final Findings findings;

  PictureChecks(PackageRead all, Findings findings) {
    this.all = all;
    this.findings = findings;
  }

  void check() {
    for (PartRead part : all.whole()) {
      Set<String> textures = all.related(part.name(), RelationshipTypes.TEXTURE);
      for (Element picture : part.references().pictures()) {
        path(picture, "path", textures, ExtensionRules.PICTURE, ExtensionRules.PICTURE_RELATION);
      }
      Set<String> thumbnails = all.related(part.name(), RelationshipTypes.THUMBNAIL);
      thumbnails.addAll(textures); // old files hang object thumbnails there (core 4)
      for (Resource object : part.model().resources()) {
        if (object.isObject()) {
          path(
              object.element(),
              "thumbnail",
              thumbnails,
              CoreRules.PICTURE,
              CoreRules.PICTURE_RELATION);
        }
      }
    }
  }

  private void path(
      Element element, String attribute, Set<String> related, Rule missing, Rule unrelated) {
    Optional<String> path = element.value(attribute).map(String::strip);
    if (path.isEmpty()) {
      return;
    }
    Optional<Part> part = all.source().part(path.get());
    String found = attribute + "=\"" + path.get() + '"';
    if (part.isEmpty()) {
      findings.add(missing, element, found, "a part of this package");
    } else if (!related.contains(part.get().name())) {
      findings.add(unrelated, element, found, "a relationship from the model part to it");
    }
  }
}
