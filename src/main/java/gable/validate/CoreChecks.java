package gable.validate;

import gable.threemf.Names;
import gable.threemf.NumberText;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Model, metadata and objects of one part. Source: core specification 1.4, chapters 3 and 4. */
final class CoreChecks implements Checker {

  /** Table 3-1. */
  private static final Set<String> METADATA =
      Set.of(
          "Title",
          "Designer",
          "Description",
          "Copyright",
          "LicenseTerms",
          "Rating",
          "CreationDate",
          "ModificationDate",
          "Application");

  private static final List<String[]> SHAPES =
      List.of(
          new String[] {Names.CORE, "mesh"},
          new String[] {Names.CORE, "components"},
          new String[] {Names.BOOLEANS, "booleanshape"},
          new String[] {Names.DISPLACEMENT, "displacementmesh"},
          new String[] {Names.VOLUMETRIC, "levelset"});

  private final PartModel part;
  private final Findings findings;
  private final Set<String> names = new HashSet<>();

  CoreChecks(PartModel part, Findings findings) {
    this.part = part;
    this.findings = findings;
  }

  @Override
  public void started(Element element) {
    if (element.isCore("model")) {
      extensions(element);
    } else if (element.isCore("metadatagroup")) {
      names.clear();
    } else if (element.isCore("metadata")) {
      metadata(element);
    }
  }

  private void extensions(Element model) {
    Map<String, String> required = listed(model, "requiredextensions");
    Map<String, String> recommended = listed(model, "recommendedextensions");
    required.forEach(
        (namespace, prefix) -> {
          if (!Schema.table().knows(namespace)) {
            String found = "the required extension " + prefix + " (" + namespace + ") is unknown";
            findings.add(CoreRules.REQUIRED, model, found, "extensions that are published");
          }
        });
    recommended.forEach(
        (namespace, prefix) -> {
          if (required.containsKey(namespace)) {
            String found = "the extension " + prefix + " is both required and recommended";
            findings.add(CoreRules.BOTH, model, found, "one of the two");
          } else if (!Schema.table().knows(namespace)) {
            String found =
                "the recommended extension " + prefix + " (" + namespace + ") is unknown";
            findings.add(CoreRules.RECOMMENDED, model, found, "extensions that are published");
          }
        });
  }

  /** The prefixes of a list by the namespaces that they mean. */
  private Map<String, String> listed(Element model, String attribute) {
    Map<String, String> listed = new LinkedHashMap<>();
    Map<String, String> prefixes = model.tag().prefixes();
    for (String prefix : NumberText.words(model.value(attribute).orElse(""))) {
      String namespace = prefixes.getOrDefault(prefix, "");
      if (namespace.isEmpty()) {
        String found = attribute + " lists '" + prefix + "', which is not declared";
        findings.add(CoreRules.PREFIX, model, found, "a prefix that the model declares");
      } else {
        listed.put(namespace, prefix);
      }
    }
    return listed;
  }

  private void metadata(Element element) {
    String name = element.value("name").orElse("").strip();
    int colon = name.indexOf(':');
    boolean known =
        colon < 0 ? METADATA.contains(name) : part.prefixes().containsKey(name.substring(0, colon));
    if (!known && !name.isEmpty()) {
      String expected = "a name of table 3-1, or one with a declared prefix";
      findings.add(CoreRules.METADATA_NAME, element, "the metadata name '" + name + '\'', expected);
    }
    if (!names.add(name)) {
      String found = "metadata of the name '" + name + "' a second time";
      findings.add(CoreRules.METADATA_TWICE, element, found, "each name once");
    }
  }

  @Override
  public void ended(Element element) {
    if (element.isCore("object")) {
      object(element);
    } else if (element.isCore("build") && part.isRoot() && part.items().isEmpty()) {
      findings.add(CoreRules.NO_ITEMS, element, "a build without items", "one or more");
    }
  }

  private void object(Element object) {
    long shapes = SHAPES.stream().filter(each -> object.count(each[0], each[1]) > 0).count();
    if (shapes != 1) {
      String found = shapes == 0 ? "an object without a shape" : shapes + " shapes in one object";
      findings.add(CoreRules.SHAPE, object, found, "a mesh, components or another shape");
    }
    boolean hasGroup = object.value("pid").isPresent();
    if (object.value("pindex").isPresent() && !hasGroup) {
      findings.add(CoreRules.INDEX_WITHOUT_GROUP, object, "pindex without pid", "both");
    }
    boolean assembled =
        object.count(Names.CORE, "components") > 0
            || object.count(Names.BOOLEANS, "booleanshape") > 0;
    if (assembled && hasGroup) {
      String found = "pid on an object that is made of others";
      findings.add(CoreRules.GROUP_ON_COMPONENTS, object, found, "none");
    }
  }
}
