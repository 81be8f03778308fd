package gable.validate;

import gable.geom.Affine3;
import gable.threemf.Names;
import gable.threemf.NumberText;
import gable.validate.PackageRead.Target;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Items and components of all parts: what they show, in which order, without cycles. Source: core
 * specification 1.4, sections 3.3, 3.4.3.1 and 4.2.1; production extension 3.
 */
final class BuildChecks {

  /** Below it round-off eats what the transform keeps apart (practice). */
  private static final double LEAST_CONDITION = 1e-6;

  private final PackageRead all;
  private final Findings findings;
  private final Map<Element, Target> shown = new HashMap<>();
  private final Map<Element, List<Element>> components = new HashMap<>();

  BuildChecks(PackageRead all, Findings findings) {
    this.all = all;
    this.findings = findings;
  }

  void check() {
    for (PartRead part : all.whole()) {
      part.model().components().forEach(this::component);
    }
    for (PartRead part : all.whole()) {
      if (part.model().isRoot()) {
        part.model().items().forEach(this::reference);
        part.model().items().forEach(this::notOther);
      }
    }
    cycles();
  }

  /** What an item or component shows. */
  Optional<Target> shown(Element use) {
    return Optional.ofNullable(shown.get(use));
  }

  /** The components of an object. */
  List<Element> components(Element object) {
    return components.getOrDefault(object, List.of());
  }

  private void component(Element component) {
    Element object = component.parent().parent();
    components.computeIfAbsent(object, key -> new ArrayList<>()).add(component);
    Optional<Target> target = reference(component);
    if (target.isPresent() && target.get().part() == all.part(component)) {
      int own =
          all.part(component).model().resource(object.index("id")).map(Resource::order).orElse(0);
      if (target.get().resource().order() >= own) {
        String found = target.get().resource().words() + " is defined at or after its use";
        findings.add(CoreRules.DEFINED_LATER, component, found, "objects defined before");
      }
    }
  }

  private Optional<Target> reference(Element use) {
    Optional<Target> target =
        all.target(
            use,
            use.tag().value(Names.PRODUCTION, "path"),
            use.index("objectid"),
            CoreRules.REFERENCE);
    if (target.filter(each -> !each.resource().isObject()).isPresent()) {
      String found = target.get().resource().words() + ", which is no object";
      findings.add(CoreRules.REFERENCE, use, found, "the id of an object");
      target = Optional.empty();
    }
    target.ifPresent(each -> shown.put(use, each));
    transform(use);
    return target;
  }

  private void transform(Element use) {
    List<String> words = NumberText.words(use.value("transform").orElse(""));
    double[] numbers = words.stream().mapToDouble(NumberText::number).toArray();
    boolean sound = numbers.length == 12;
    for (double number : numbers) {
      sound &= !Double.isNaN(number);
    }
    if (sound && !(Affine3.of(numbers).reciprocalCondition() >= LEAST_CONDITION)) {
      String found = "transform=\"" + use.value("transform").orElse("") + '"';
      findings.add(CoreRules.SINGULAR, use, found, "a transform that has an inverse");
    }
  }

  private void notOther(Element item) {
    Set<Element> seen = new HashSet<>();
    Deque<Element> left = new ArrayDeque<>(List.of(item));
    while (!left.isEmpty()) {
      Optional<Target> target = shown(left.pop());
      if (target.isPresent() && seen.add(target.get().resource().element())) {
        Resource object = target.get().resource();
        if (!object.isComponents() && object.type().equals("other")) {
          String found = object.words() + " of type other";
          findings.add(CoreRules.OTHER, item, found, "objects that are printed");
        }
        left.addAll(components(object.element()));
      }
    }
  }

  /** Walks down from each object; one that is met on its own way down is in a cycle. */
  private void cycles() {
    Set<Element> done = new HashSet<>();
    for (Element start : components.keySet()) {
      Deque<Element> path = new ArrayDeque<>();
      Set<Element> on = new HashSet<>();
      Deque<Deque<Element>> left = new ArrayDeque<>();
      enter(start, path, on, left);
      while (!left.isEmpty()) {
        if (left.element().isEmpty()) {
          left.pop();
          Element object = path.pop();
          on.remove(object);
          done.add(object);
          continue;
        }
        Element use = left.element().pop();
        Optional<Element> next = shown(use).map(target -> target.resource().element());
        if (next.filter(on::contains).isPresent()) {
          String found = "a component of itself";
          findings.add(CoreRules.CYCLE, use, found, "objects defined before");
        } else if (next.filter(object -> !done.contains(object)).isPresent()) {
          enter(next.get(), path, on, left);
        }
      }
    }
  }

  private void enter(
      Element object, Deque<Element> path, Set<Element> on, Deque<Deque<Element>> left) {
    path.push(object);
    on.add(object);
    left.push(new ArrayDeque<>(components(object)));
  }
}
