package gable.validate;

import gable.threemf.LengthUnit;
import gable.threemf.Names;
import gable.threemf.NumberText;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What checkers of a part and of the whole package need to know of a part: its resources, its
 * references and the extensions that it uses and asks for. Filled while the part is walked through.
 */
final class PartModel implements Checker {

  private final String name;
  private final boolean root;
  private final Findings findings;
  private final Map<Integer, Resource> resources = new LinkedHashMap<>();
  private final List<Element> items = new ArrayList<>();
  private final List<Element> references = new ArrayList<>();
  private final Set<String> used = new HashSet<>();
  private final Set<String> required = new HashSet<>();
  private final Map<String, String> prefixes = new HashMap<>();
  private Optional<Element> model = Optional.empty();
  private Optional<Element> build = Optional.empty();

  PartModel(String name, boolean root, Findings findings) {
    this.name = name;
    this.root = root;
    this.findings = findings;
  }

  @Override
  public void started(Element element) {
    used.add(element.tag().namespace());
    element.tag().attributes().forEach(attribute -> used.add(attribute.namespace()));
    if (element.isCore("model")) {
      model = Optional.of(element);
      prefixes.putAll(element.tag().prefixes());
      for (String prefix : NumberText.words(element.value("requiredextensions").orElse(""))) {
        Optional.ofNullable(prefixes.get(prefix)).ifPresent(required::add);
      }
    } else if (element.isCore("build")) {
      build = Optional.of(element);
    } else if (element.isCore("item")) {
      items.add(element);
    } else if (element.isCore("component")) {
      references.add(element);
    } else if (element.ifParent().filter(up -> up.isCore("resources")).isPresent()) {
      resource(element);
    }
  }

  private void resource(Element element) {
    int id = element.index("id");
    if (id < 1) {
      return; // the table has found it
    }
    Resource resource = new Resource(element, id, resources.size());
    Resource first = resources.putIfAbsent(id, resource);
    if (first != null) {
      String found = "the id " + id + ", which " + first.words() + " has already";
      findings.add(CoreRules.SAME_ID, element, found, "an id of its own");
    }
  }

  String name() {
    return name;
  }

  boolean isRoot() {
    return root;
  }

  /** The resource with an id. */
  Optional<Resource> resource(int id) {
    return Optional.ofNullable(resources.get(id));
  }

  List<Resource> resources() {
    return List.copyOf(resources.values());
  }

  List<Element> items() {
    return List.copyOf(items);
  }

  /** All components. */
  List<Element> components() {
    return List.copyOf(references);
  }

  Optional<Element> model() {
    return model;
  }

  Optional<Element> build() {
    return build;
  }

  /** Namespaces that the root element declares, by prefix. */
  Map<String, String> prefixes() {
    return prefixes;
  }

  /** Whether elements or attributes of a namespace occur in it where they may. */
  boolean uses(String namespace) {
    return used.contains(namespace);
  }

  /** Whether it lists an extension as required. */
  boolean requires(String namespace) {
    return required.contains(namespace);
  }

  /** Millimetres in the unit of the part. */
  double millimetres() {
    String word = model.flatMap(each -> each.value("unit")).orElse("millimeter");
    return LengthUnit.of(word.strip()).map(LengthUnit::millimetres).orElse(1.0);
  }

  /** Whether the production extension is declared, which by practice counts as using it. */
  boolean declaresProduction() {
    return prefixes.containsValue(Names.PRODUCTION);
  }
}
