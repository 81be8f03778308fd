package gable.place;

import gable.geom.Affine3;
import gable.opc.Place;
import gable.opc.Problem;
import gable.opc.Rule;
import gable.threemf.ComponentsObject;
import gable.threemf.MeshObject;
import gable.threemf.ModelLimits;
import gable.threemf.ModelObject;
import gable.threemf.ModelPackage;
import gable.threemf.ObjectType;
import gable.threemf.Reference;
import gable.threemf.Use;
import gable.threemf.VertexGrid;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Walks from the build items through components to meshes, with a stack of its own.
 *
 * <p>Source: core specification 1.4, sections 3.3, 3.4.3.1 and 4.2.1: points are row vectors, the
 * innermost transform comes first.
 */
final class BuildWalk {

  private static final double LEAST_CONDITION = 1e-6;

  private record Step(ModelObject object, Affine3 toBuild, List<Reference> path) {}

  private record Placed(Affine3 toPrint, LinearClass kind, List<Use> uses) {}

  private final ModelPackage model;
  private final Affine3 laying;
  private final Expansion expansion;
  private final PlateLimits plate;
  private final Map<MeshObject, List<Placed>> found = new LinkedHashMap<>();
  private final List<Unplaced> unplaced = new ArrayList<>();
  private final List<Problem> problems = new ArrayList<>();
  private final Set<ModelObject> reached = Collections.newSetFromMap(new IdentityHashMap<>());
  private final Set<ModelObject> barred = Collections.newSetFromMap(new IdentityHashMap<>());
  private final Set<ModelObject> refused = Collections.newSetFromMap(new IdentityHashMap<>());

  BuildWalk(ModelPackage model, Affine3 laying, ModelLimits limits) {
    this.model = model;
    this.laying = laying;
    this.expansion = new Expansion(model, limits);
    this.plate = new PlateLimits(limits);
  }

  Placements run() {
    for (Reference item : model.root().items()) {
      Optional<ModelObject> target = model.target(item);
      Optional<Problem> wrong = target.map(expansion::wrong).orElse(Optional.of(dangling(item)));
      if (wrong.isPresent()) {
        problems.add(wrong.get().at(wrong.get().place().at("model/build/item " + item.index())));
        target.ifPresent(reached::add);
      } else {
        target.ifPresent(object -> walk(new Step(object, item.transform(), List.of(item))));
      }
    }
    notReached();
    return new Placements(placed(), unplaced, problems);
  }

  private Problem dangling(Reference reference) {
    String found = "object " + reference.objectId() + " of " + reference.part();
    Place place = Place.of(model.root().name());
    return new Problem(PlaceRules.REFERENCE, place, found, "an object that exists");
  }

  private void walk(Step first) {
    Deque<Step> left = new ArrayDeque<>(List.of(first));
    while (!left.isEmpty()) {
      Step step = left.pop();
      reached.add(step.object);
      if (step.object instanceof MeshObject mesh) {
        place(mesh, step);
      } else if (step.object.problem().isPresent()) {
        refuse(step.object, step.object.problem().get());
      } else if (step.object instanceof ComponentsObject group) {
        descend(group, step, left);
      }
    }
  }

  private void descend(ComponentsObject group, Step step, Deque<Step> left) {
    List<Reference> components = group.components();
    for (int i = components.size() - 1; i >= 0; i--) {
      Reference component = components.get(i);
      List<Reference> path = new ArrayList<>(step.path);
      path.add(component);
      Affine3 toBuild = component.transform().then(step.toBuild);
      model.target(component).ifPresent(object -> left.push(new Step(object, toBuild, path)));
    }
  }

  private void place(MeshObject mesh, Step step) {
    Optional<Problem> wrong = mesh.problem().or(() -> typeOf(mesh));
    if (wrong.isPresent()) {
      refuse(mesh, wrong.get());
      return;
    }
    double unit = model.part(mesh.part()).orElseThrow().unit().millimetres();
    Affine3 toPrint = Affine3.scale(unit).then(step.toBuild).then(laying);
    Optional<Problem> far = plate.tooFar(mesh, toPrint);
    if (far.isPresent()) {
      bar(mesh, far.get());
    } else if (toPrint.reciprocalCondition() < LEAST_CONDITION) {
      refuse(mesh, problem(mesh, PlaceRules.SINGULAR, "a transform without an inverse", "one"));
    } else if (!barred.contains(mesh)) {
      add(mesh, toPrint, new Use(step.path));
    }
  }

  /** Leaves a mesh out, wherever else it is used: an edit for one use would change them all. */
  private void bar(MeshObject mesh, Problem reason) {
    refuse(mesh, reason);
    barred.add(mesh);
    found.remove(mesh);
  }

  private void add(MeshObject mesh, Affine3 toPrint, Use use) {
    List<Placed> all = found.computeIfAbsent(mesh, key -> new ArrayList<>());
    LinearClass kind = new LinearClass(toPrint);
    for (Placed placed : all) {
      if (placed.kind.sameAs(kind)) {
        placed.uses.add(use);
        return;
      }
    }
    Optional<Problem> many = plate.tooMany(mesh, all.size());
    if (many.isPresent()) {
      bar(mesh, many.get());
    } else {
      all.add(new Placed(toPrint, kind, new ArrayList<>(List.of(use))));
    }
  }

  private Optional<Problem> typeOf(MeshObject mesh) {
    if (mesh.type() == ObjectType.MODEL) {
      return Optional.empty();
    }
    Rule rule = mesh.type() == ObjectType.OTHER ? PlaceRules.OTHER : PlaceRules.NOT_MODEL;
    return Optional.of(
        problem(mesh, rule, "an object of type " + mesh.type().word(), "type model"));
  }

  private static Problem problem(ModelObject object, Rule rule, String found, String expected) {
    Place place = Place.of(object.part()).at("model/resources/object " + object.id());
    return new Problem(rule, place, found, expected);
  }

  private void refuse(ModelObject object, Problem reason) {
    if (refused.add(object)) {
      unplaced.add(new Unplaced(object, reason));
    }
  }

  private void notReached() {
    model.parts().stream()
        .flatMap(part -> part.objects().values().stream())
        .filter(object -> !reached.contains(object))
        .filter(object -> !(object instanceof ComponentsObject))
        .forEach(
            object ->
                refuse(
                    object,
                    object
                        .problem()
                        .orElseGet(
                            () ->
                                problem(
                                    object,
                                    PlaceRules.NOT_PRINTED,
                                    "an object that no build item uses",
                                    "a build item that uses it"))));
  }

  private List<PlacedObject> placed() {
    List<PlacedObject> placed = new ArrayList<>();
    found.forEach(
        (mesh, all) -> {
          double reach = mesh.mesh().box().reach();
          for (Placed each : all) {
            VertexGrid grid = VertexGrid.of(each.toPrint, reach);
            placed.add(new PlacedObject(mesh, each.toPrint, each.uses, grid));
          }
        });
    return placed;
  }
}
