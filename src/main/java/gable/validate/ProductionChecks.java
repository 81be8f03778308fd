package gable.validate;

import gable.opc.Rule;
import gable.threemf.Names;
import gable.validate.PackageRead.Target;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * UUIDs, child parts, alternatives and boolean shapes: what names objects across parts. Source:
 * production extension with alternatives, boolean extension.
 */
final class ProductionChecks {

  private final PackageRead all;
  private final Findings findings;
  private final Map<String, String> uuids = new HashMap<>();

  ProductionChecks(PackageRead all, Findings findings) {
    this.all = all;
    this.findings = findings;
  }

  void check() {
    for (PartRead part : all.whole()) {
      identities(part.model());
      if (!part.model().isRoot()) {
        child(part.model());
      }
      part.references().alternatives().forEach(this::alternative);
      part.references().booleans().forEach(this::operand);
      part.model().resources().forEach(this::fullres);
    }
  }

  private void identities(PartModel part) {
    if (!part.declaresProduction()) {
      return;
    }
    List<Element> named = new ArrayList<>(part.items());
    part.build().filter(build -> part.isRoot()).ifPresent(named::add);
    part.resources().stream().filter(Resource::isObject).forEach(o -> named.add(o.element()));
    named.addAll(part.components());
    for (Element element : named) {
      Optional<String> uuid = element.tag().value(Names.PRODUCTION, "UUID");
      if (uuid.isEmpty()) {
        String found = "'" + element.tag().name() + "' without a UUID";
        findings.add(ExtensionRules.NO_UUID, element, found, "one, since the extension is used");
      } else {
        unique(element, uuid.get().strip());
      }
    }
  }

  private void unique(Element element, String uuid) {
    String other = uuids.putIfAbsent(uuid, element.toString());
    if (other != null) {
      String found = "the UUID " + uuid + ", which " + other + " has already";
      findings.add(ExtensionRules.SAME_UUID, element, found, "a UUID of its own");
    }
  }

  private void child(PartModel part) {
    if (!part.items().isEmpty()) {
      String found = part.items().size() + " build items in a part that is not the root";
      findings.add(ExtensionRules.CHILD_BUILD, part.items().get(0), found, "an empty build");
    }
    if (part.millimetres() != all.root().model().millimetres() && part.model().isPresent()) {
      String found = "another unit than the root part has";
      findings.add(ExtensionRules.CHILD_UNIT, part.model().get(), found, "one unit");
    }
  }

  private void alternative(Element alternative) {
    if (!all.part(alternative).model().isRoot()) {
      String found = "an alternative in a part that is not the root";
      findings.add(ExtensionRules.ALTERNATIVE_DEPTH, alternative, found, "the root part");
    }
    Optional<Target> target = target(alternative, ExtensionRules.ALTERNATIVE);
    if (target.filter(each -> !each.resource().isObject()).isPresent()) {
      String found = target.get().resource().words() + " as an alternative";
      findings.add(ExtensionRules.ALTERNATIVE, alternative, found, "an object");
    }
    boolean named =
        alternative.value("UUID").isPresent()
            || alternative.tag().value(Names.PRODUCTION, "UUID").isPresent();
    if (!named) {
      findings.add(ExtensionRules.NO_UUID, alternative, "an alternative without a UUID", "one");
    }
  }

  private Optional<Target> target(Element from, Rule missing) {
    return all.target(from, from.value("path"), from.index("objectid"), missing);
  }

  private void fullres(Resource object) {
    if (object.element().count(Names.ALTERNATIVES, "alternatives") == 0) {
      return;
    }
    PartRead part = all.part(object.element());
    long full =
        part.references().alternatives().stream()
            .filter(each -> each.parent().parent() == object.element())
            .filter(each -> each.value("modelresolution").orElse("fullres").equals("fullres"))
            .count();
    String own =
        object.element().tag().value(Names.ALTERNATIVES, "modelresolution").orElse("fullres");
    full += own.strip().equals("fullres") ? 1 : 0;
    if (full != 1) {
      String found = full + " representations are fullres";
      findings.add(ExtensionRules.FULL, object.element(), found, "one");
    }
  }

  /** The base may be any shape, an operand a mesh and nothing else. */
  private void operand(Element element) {
    boolean base = element.tag().name().equals("booleanshape");
    Rule rule = base ? ExtensionRules.BASE : ExtensionRules.OPERAND;
    Optional<Target> target = target(element, rule);
    if (target.isEmpty()) {
      return;
    }
    Resource object = target.get().resource();
    boolean plain =
        object.isMesh() && target.get().part().meshes().ofObject(object.element()).isPresent();
    boolean shape = object.isObject() && !object.isComponents();
    boolean alternatives = object.element().count(Names.ALTERNATIVES, "alternatives") > 0;
    boolean sound = (base ? shape : plain && !hasLattice(target.get())) && !alternatives;
    if (!sound || !object.type().equals("model")) {
      String found = object.words() + " of type " + object.type();
      String expected = base ? "a shape of type model" : "a plain mesh of type model";
      findings.add(rule, element, found, expected);
    }
  }

  private static boolean hasLattice(Target target) {
    return target.part().meshes().hasLattice(target.resource().element());
  }
}
