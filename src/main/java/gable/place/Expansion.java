package gable.place;

import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import gable.threemf.ComponentsObject;
import gable.threemf.ModelLimits;
import gable.threemf.ModelObject;
import gable.threemf.ModelPackage;
import gable.threemf.Reference;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.Optional;

/**
 * Judges what an object expands to before it is expanded: components that hold themselves, that
 * nest too deeply or that multiply beyond all measure. Each object is judged once, whatever uses
 * it; the walk keeps its own stack.
 */
final class Expansion {

  /** What an object comes to: depth of nesting and number of meshes, or why it cannot be used. */
  private record Size(int depth, long meshes, Optional<Problem> wrong) {}

  private final ModelPackage model;
  private final ModelLimits limits;
  private final IdentityHashMap<ModelObject, Optional<Size>> sizes = new IdentityHashMap<>();
  private long meshes;

  Expansion(ModelPackage model, ModelLimits limits) {
    this.model = model;
    this.limits = limits;
  }

  /** Why an object that an item uses cannot be expanded, if so; counts it if it can. */
  Optional<Problem> wrong(ModelObject object) {
    Size size = size(object);
    meshes = Math.min(Integer.MAX_VALUE, meshes + size.meshes);
    if (size.wrong.isEmpty() && meshes > limits.instances()) {
      String found = meshes + " meshes on the plate";
      return Optional.of(
          problem(object, PlaceRules.INSTANCES, found, "at most " + limits.instances()));
    }
    return size.wrong;
  }

  private Size size(ModelObject top) {
    Deque<ModelObject> open = new ArrayDeque<>();
    open.push(top);
    while (!open.isEmpty()) {
      ModelObject object = open.peek();
      if (known(object).isPresent()) {
        open.pop();
      } else if (!(object instanceof ComponentsObject group)) {
        sizes.put(object, Optional.of(new Size(1, 1, Optional.empty())));
      } else if (sizes.containsKey(object)) {
        sizes.put(object, Optional.of(sum(group))); // met again: all below are known
      } else {
        sizes.put(object, Optional.empty()); // grey: being walked
        group.components().stream()
            .map(model::target)
            .flatMap(Optional::stream)
            .filter(part -> !sizes.containsKey(part))
            .forEach(open::push);
      }
    }
    return known(top).orElseThrow();
  }

  private Optional<Size> known(ModelObject object) {
    return sizes.getOrDefault(object, Optional.empty());
  }

  private Size sum(ComponentsObject group) {
    int depth = 1;
    long count = 0;
    Optional<Problem> wrong = Optional.empty();
    for (Reference component : group.components()) {
      Optional<ModelObject> target = model.target(component);
      Optional<Size> part = target.flatMap(this::known);
      if (part.isPresent()) {
        depth = Math.max(depth, 1 + part.get().depth);
        count = Math.min(Integer.MAX_VALUE, count + part.get().meshes);
        wrong = wrong.or(part.get()::wrong).or(() -> forward(group, target.orElseThrow()));
      } else {
        Problem reason = target.isPresent() ? cycle(group) : dangling(group, component);
        wrong = wrong.or(() -> Optional.of(reason));
      }
    }
    if (wrong.isEmpty() && depth > limits.depth()) {
      String found = "components nested " + depth + " deep";
      wrong = Optional.of(problem(group, PlaceRules.DEPTH, found, "at most " + limits.depth()));
    }
    return new Size(depth, count, wrong);
  }

  private static Problem cycle(ModelObject group) {
    String found = "object " + group.id() + " is made of itself";
    return problem(group, PlaceRules.CYCLE, found, "components that are defined before");
  }

  /** Objects of one part are defined before they are used; readers rely on it. */
  private static Optional<Problem> forward(ModelObject group, ModelObject target) {
    boolean before = target.head().number() < group.head().number();
    if (before || !target.part().equals(group.part())) {
      return Optional.empty();
    }
    String found = "object " + target.id() + ", which is defined further down";
    return Optional.of(
        problem(group, PlaceRules.ORDER, found, "components that are defined before"));
  }

  private static Problem dangling(ModelObject group, Reference component) {
    String found = "object " + component.objectId() + " of " + component.part();
    return problem(group, PlaceRules.REFERENCE, found, "an object that exists");
  }

  private static Problem problem(ModelObject object, Rule rule, String found, String expected) {
    Place place = Place.of(object.part()).at("model/resources/object " + object.id());
    return new Problem(rule, place, found, expected);
  }
}
