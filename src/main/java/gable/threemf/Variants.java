package gable.threemf;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds which variants of which objects a set of edits asks for.
 *
 * <p>An edit for all uses changes its object everywhere. An edit for some uses concerns the paths
 * that lead to them and nothing else, so only these are walked, and every other path shares one
 * variant for each object: the work does not grow with what the components expand to.
 */
final class Variants {

  private record Shape(String part, int id, int edit, List<Integer> components) {}

  private final ModelPackage model;
  private final IdentityHashMap<ObjectEdit, Integer> edits = new IdentityHashMap<>();
  private final IdentityHashMap<MeshObject, ObjectEdit> everywhere = new IdentityHashMap<>();
  private final Map<List<Integer>, ObjectEdit> byPath = new HashMap<>();
  private final Set<List<Integer>> prefixes = new HashSet<>();
  private final Map<Shape, Variant> made = new LinkedHashMap<>();
  private final IdentityHashMap<Variant, Integer> numbers = new IdentityHashMap<>();
  private final IdentityHashMap<ModelObject, Optional<Variant>> usual = new IdentityHashMap<>();
  private final List<Optional<Variant>> items = new ArrayList<>();

  private Variants(ModelPackage model) {
    this.model = model;
  }

  /** The variants that the edits ask for. */
  static Variants of(ModelPackage model, List<ObjectEdit> edits) {
    Variants variants = new Variants(model);
    edits.forEach(variants::learn);
    for (Reference item : model.root().items()) {
      List<Integer> path = List.of(item.number());
      variants.items.add(model.target(item).map(object -> variants.along(object, path)));
    }
    variants.everywhere.keySet().forEach(variants::usual);
    return variants;
  }

  private void learn(ObjectEdit edit) {
    edits.put(edit, edits.size());
    if (edit.uses().isEmpty()) {
      everywhere.put(edit.object(), edit);
    }
    for (Use use : edit.uses()) {
      List<Integer> path = use.path().stream().map(Reference::number).toList();
      byPath.put(path, edit);
      for (int length = 1; length <= path.size(); length++) {
        prefixes.add(path.subList(0, length));
      }
    }
  }

  /** The variant of an object at a path; as deep as the longest path of an edit. */
  private Variant along(ModelObject object, List<Integer> path) {
    if (!prefixes.contains(path)) {
      return usual(object);
    }
    if (!(object instanceof ComponentsObject group)) {
      return leaf(object, Optional.ofNullable(byPath.get(path)));
    }
    List<Optional<Variant>> components = new ArrayList<>();
    for (Reference component : group.components()) {
      List<Integer> longer = new ArrayList<>(path);
      longer.add(component.number());
      components.add(model.target(component).map(part -> along(part, longer)));
    }
    return made(object, Optional.empty(), components);
  }

  private Variant leaf(ModelObject object, Optional<ObjectEdit> own) {
    Optional<ObjectEdit> edit = own;
    if (object instanceof MeshObject mesh && own.isEmpty()) {
      edit = Optional.ofNullable(everywhere.get(mesh));
    }
    return made(object, edit, List.of());
  }

  /** The variant of an object where no edit asks for a certain path; with a stack of its own. */
  private Variant usual(ModelObject top) {
    Deque<ModelObject> open = new ArrayDeque<>(List.of(top));
    while (!open.isEmpty()) {
      ModelObject object = open.peek();
      if (known(object).isPresent()) {
        open.pop();
      } else if (!(object instanceof ComponentsObject group)) {
        usual.put(object, Optional.of(leaf(object, Optional.empty())));
      } else if (usual.containsKey(object)) {
        List<Optional<Variant>> components =
            group.components().stream().map(c -> model.target(c).flatMap(this::known)).toList();
        usual.put(object, Optional.of(made(object, Optional.empty(), components)));
      } else {
        usual.put(object, Optional.empty());
        group.components().stream()
            .map(model::target)
            .flatMap(Optional::stream)
            .filter(part -> !usual.containsKey(part))
            .forEach(open::push);
      }
    }
    return known(top).orElseThrow();
  }

  private Optional<Variant> known(ModelObject object) {
    return usual.getOrDefault(object, Optional.empty());
  }

  private Variant made(
      ModelObject object, Optional<ObjectEdit> edit, List<Optional<Variant>> components) {
    List<Integer> parts =
        components.stream().map(part -> part.map(numbers::get).orElse(-1)).toList();
    int number = edit.map(edits::get).orElse(-1);
    Shape shape = new Shape(object.part(), object.id(), number, parts);
    Variant known = made.get(shape);
    if (known != null) {
      return known;
    }
    Variant variant = new Variant(object, edit, components);
    numbers.put(variant, numbers.size());
    made.put(shape, variant);
    return variant;
  }

  /** For each build item the variant of its object, if that exists. */
  List<Optional<Variant>> items() {
    return Collections.unmodifiableList(items);
  }

  /**
   * The variants of each object that has a changed one, in the order of their first use; the one
   * that keeps the object's place comes first. An unchanged one always does.
   */
  List<List<Variant>> changed() {
    IdentityHashMap<ModelObject, Integer> places = new IdentityHashMap<>();
    List<List<Variant>> all = new ArrayList<>();
    for (Variant variant : made.values()) {
      int place = places.computeIfAbsent(variant.object(), object -> places.size());
      if (place == all.size()) {
        all.add(new ArrayList<>());
      }
      all.get(place).add(variant.changed() ? all.get(place).size() : 0, variant);
    }
    all.removeIf(variants -> variants.stream().noneMatch(Variant::changed));
    return all;
  }
}
