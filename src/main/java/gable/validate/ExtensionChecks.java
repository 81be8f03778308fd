package gable.validate;

import gable.threemf.Names;

/**
 * Extensions that a part uses in a way for which it must list them as required. Source: beam
 * lattice 1, boolean 1, displacement 1, volumetric 1, production 1.
 */
final class ExtensionChecks {

  private final PackageRead all;
  private final Findings findings;

  ExtensionChecks(PackageRead all, Findings findings) {
    this.all = all;
    this.findings = findings;
  }

  void check() {
    for (PartRead part : all.whole()) {
      PartModel model = part.model();
      required(model, model.uses(Names.BEAMS), Names.BEAMS, "a beam lattice");
      required(model, model.uses(Names.BOOLEANS), Names.BOOLEANS, "a boolean shape");
      required(model, model.uses(Names.DISPLACEMENT), Names.DISPLACEMENT, "displacement");
      boolean levelset =
          model.resources().stream()
              .anyMatch(each -> each.element().count(Names.VOLUMETRIC, "levelset") > 0);
      required(model, levelset, Names.VOLUMETRIC, "a level set");
      boolean paths =
          model.items().stream().anyMatch(ExtensionChecks::hasPath)
              || model.components().stream().anyMatch(ExtensionChecks::hasPath);
      required(model, paths, Names.PRODUCTION, "objects of other parts");
    }
  }

  private static boolean hasPath(Element use) {
    return use.tag().value(Names.PRODUCTION, "path").isPresent();
  }

  private void required(PartModel part, boolean used, String namespace, String what) {
    if (used && !part.requires(namespace)) {
      String found = what + ", but the extension " + namespace + " is not listed as required";
      part.model()
          .ifPresent(
              model -> findings.add(CoreRules.NOT_REQUIRED, model, found, "requiredextensions"));
    }
  }
}
