package gable.pipeline;

import gable.geom.Affine3;
import gable.opc.Printable;
import gable.opc.Problem;
import gable.pipeline.Settings.MixedOrientation;
import gable.place.PlacedObject;
import gable.place.Placements;
import gable.place.Unplaced;
import gable.plan.Reason;
import gable.threemf.MeshObject;
import gable.threemf.ModelObject;
import gable.threemf.Use;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** Turns the meshes on the plate into tasks, and the objects that are not on it into results. */
final class Plate {

  private static final Reason MIXED =
      new Reason(
          "mixed-orientation",
          "the object lies several ways up in this build, and cloning it was not wanted");
  private static final Reason SIGNED =
      new Reason(
          "signed-part",
          "a digital signature covers this part of the model, and a change would break it (3MF Core"
              + " 6.3)");

  private final Placements placements;
  private final Work work;
  private final Conformance conformance;
  private final Predicate<String> signed;

  /**
   * A plate.
   *
   * @param placements what lies on it
   * @param work what to do
   * @param conformance what the standard says of the input
   * @param signed tells whether a change of an object in a part would break a signature
   */
  Plate(Placements placements, Work work, Conformance conformance, Predicate<String> signed) {
    this.placements = placements;
    this.work = work;
    this.conformance = conformance;
    this.signed = signed;
  }

  /** One task for each object and direction, in the order of the build. */
  List<ObjectTask> tasks() {
    Map<MeshObject, Integer> directions = new HashMap<>();
    placements.placed().forEach(placed -> directions.merge(placed.object(), 1, Integer::sum));
    List<ObjectTask> tasks = new ArrayList<>();
    for (PlacedObject placed : placements.placed()) {
      boolean mixed = directions.getOrDefault(placed.object(), 0) > 1;
      ObjectPlace place = place(placed, tasks.size() + 1);
      tasks.add(new ObjectTask(placed, place, work, mixed, bound(placed, mixed)));
    }
    return tasks;
  }

  /** Why a mesh may be looked at but must stay as it is. */
  private Optional<Reason> bound(PlacedObject placed, boolean mixed) {
    Optional<Problem> locked = placed.object().locked();
    if (locked.isPresent()) {
      return Optional.of(new Reason(locked.get().code(), locked.get().message()));
    }
    if (signed.test(placed.object().part())) {
      return Optional.of(SIGNED);
    }
    Optional<Reason> broken = conformance.against(placed.object());
    if (broken.isPresent()) {
      return broken;
    }
    return mixed && work.settings().handling().mixedOrientation() == MixedOrientation.LEAVE
        ? Optional.of(MIXED)
        : Optional.empty();
  }

  /** Results for what cannot be examined or is not printed. */
  List<ObjectResult> skipped() {
    return placements.unplaced().stream().map(Plate::skipped).toList();
  }

  /** What is wrong with the build as a whole. */
  List<Notice> notices() {
    return Problems.notices(placements.problems());
  }

  /** Ids get the number of the object in front as soon as there are several. */
  private ObjectPlace place(PlacedObject placed, int number) {
    String prefix = placements.placed().size() == 1 ? "" : number + ".";
    List<ObjectPlace.Use> uses = new ArrayList<>();
    for (Use use : placed.uses()) {
      uses.add(new ObjectPlace.Use(use.item(), fromFirst(placed.uses().get(0), use)));
    }
    return new ObjectPlace(
        prefix, placed.object().part(), placed.object().id(), name(placed.object()), uses);
  }

  /** Out of print space and the first placement, then into the other and print space again. */
  private Affine3 fromFirst(Use first, Use other) {
    Affine3 laying = Affine3.layingUp(work.settings().up());
    return laying.inverse().then(toBuild(first).inverse()).then(toBuild(other)).then(laying);
  }

  /** The innermost transform comes first (3MF Core 1.4, section 4.2). */
  private static Affine3 toBuild(Use use) {
    Affine3 map = Affine3.IDENTITY;
    for (int step = use.path().size() - 1; step >= 0; step--) {
      map = map.then(use.path().get(step).transform());
    }
    return map;
  }

  private static ObjectResult skipped(Unplaced unplaced) {
    ModelObject object = unplaced.object();
    ObjectPlace place = new ObjectPlace("", object.part(), object.id(), name(object), List.of());
    return new ObjectResult.Skipped(place, Problems.notice(unplaced.reason()));
  }

  private static String name(ModelObject object) {
    return Printable.text(object.name());
  }
}
