package gable.threemf;

import gable.opc.Problem;
import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Carries locks to where one part alone does not see them: to objects of other parts that an
 * alternative names, and from an object with slices down to the meshes that it is made of.
 */
final class Locking {

  private final Map<String, ModelPart> parts;
  private final Map<String, String> names;
  private final IdentityHashMap<ModelObject, Problem> locked = new IdentityHashMap<>();

  Locking(Map<String, ModelPart> parts, Map<String, String> names) {
    this.parts = parts;
    this.names = names;
  }

  /** Other parts that a root part names, as it spells them. */
  static Set<String> paths(ModelPart root) {
    Set<String> paths = new LinkedHashSet<>();
    Stream.concat(root.items().stream(), components(root))
        .map(Reference::part)
        .filter(part -> !part.equals(root.name()))
        .forEach(paths::add);
    return paths;
  }

  private static Stream<Reference> components(ModelPart part) {
    return part.objects().values().stream()
        .filter(ComponentsObject.class::isInstance)
        .flatMap(object -> ((ComponentsObject) object).components().stream());
  }

  /** All parts with their objects locked as the whole package asks for. */
  Map<String, ModelPart> applied(ModelPart root) {
    for (ModelPart part : parts.values()) {
      part.locks().targets().forEach((target, problem) -> lock(part, target, problem));
      for (ModelObject object : part.objects().values()) {
        if (object instanceof ComponentsObject group && group.locked().isPresent()) {
          lockBelow(group, group.locked().get());
        }
      }
    }
    Optional<Problem> refused = root.unsupported();
    Map<String, ModelPart> result = new LinkedHashMap<>();
    parts.forEach((name, part) -> result.put(name, part.with(locked, refused, part == root)));
    return result;
  }

  private void lock(ModelPart from, Locks.Target target, Problem problem) {
    String name = target.part().isEmpty() ? from.name() : target.part();
    object(name, target.id())
        .ifPresent(
            object -> {
              locked.putIfAbsent(object, problem);
              lockBelow(object, problem);
            });
  }

  private Optional<ModelObject> object(String spelled, int id) {
    ModelPart part = parts.get(names.getOrDefault(spelled, spelled));
    return part == null ? Optional.empty() : part.object(id);
  }

  private void lockBelow(ModelObject top, Problem problem) {
    Set<ModelObject> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    Deque<ModelObject> left = new ArrayDeque<>(List.of(top));
    while (!left.isEmpty()) {
      ModelObject object = left.pop();
      if (seen.add(object) && object instanceof ComponentsObject group) {
        for (Reference component : group.components()) {
          object(component.part(), component.objectId())
              .ifPresent(
                  part -> {
                    locked.putIfAbsent(part, problem);
                    left.push(part);
                  });
        }
      }
    }
  }
}
