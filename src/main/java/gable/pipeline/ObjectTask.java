package gable.pipeline;

import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.feature.Findings;
import gable.feature.Partner;
import gable.geom.Box3;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.place.PlacedObject;
import gable.plan.Reason;
import gable.threemf.ObjectEdit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * One object the whole way, in two steps: from its mesh to its features, and from these and the
 * other halves of its joints to their outcomes and the edit of its mesh. Pure functions of the
 * object and the work; tasks of one file may run at the same time.
 */
final class ObjectTask {

  private final PlacedObject placed;
  private final ObjectPlace place;
  private final Work work;
  private final boolean mixed;
  private final Optional<Reason> bound;

  /**
   * A task.
   *
   * @param placed the object as it lies on the plate
   * @param place the same for the result
   * @param work what to do
   * @param mixed whether the object also lies another way up
   * @param bound why the mesh may be looked at but must stay as it is, if so
   */
  ObjectTask(
      PlacedObject placed, ObjectPlace place, Work work, boolean mixed, Optional<Reason> bound) {
    this.placed = placed;
    this.place = place;
    this.work = work;
    this.mixed = mixed;
    this.bound = bound;
  }

  /**
   * What a task gives.
   *
   * @param result for the reader
   * @param edit for the writer; empty if the mesh stays as it is
   * @param notice what else is to be known of the mesh
   */
  record Done(ObjectResult result, Optional<ObjectEdit> edit, Optional<Notice> notice) {}

  /**
   * An object that is reshaped, but may have to be reshaped once more.
   *
   * @param result for the reader
   * @param skin its mesh
   * @param edit what was done to it, in print space
   */
  record Draft(ObjectResult result, Skin skin, MeshEdit edit) {}

  /** The object and where it lies, for results. */
  ObjectPlace place() {
    return place;
  }

  /** Number of facets of its mesh. */
  long facets() {
    return placed.object().mesh().facetCount();
  }

  /** Its mesh as the file has it. */
  Mesh meshOfFile() {
    return placed.object().mesh();
  }

  /** Its mesh, made ready again if that was not kept. */
  Prepared prepared(Examined examined) {
    return examined.prepared().orElseGet(() -> Prepared.of(placed.printMesh()));
  }

  /**
   * Finds the features of the object.
   *
   * @param keep whether the mesh is kept for the next step, which takes memory meanwhile
   */
  Examined examine(boolean keep) {
    Prepared prepared = Prepared.of(placed.printMesh());
    Optional<Prepared> kept = keep ? Optional.of(prepared) : Optional.empty();
    Optional<Notice> unfit = unfit(prepared.skin());
    if (unfit.isPresent()) {
      return new Examined(List.of(), unfit, kept);
    }
    Findings found =
        FeatureFinder.find(
            prepared.skin().mesh(),
            prepared.skin().edges(),
            prepared.tolerances(),
            Beside.aside(work.settings().threads()));
    return new Examined(found.features(), Optional.empty(), kept);
  }

  /**
   * Reshapes the object.
   *
   * @param examined what {@link #examine} found
   * @param partners for the id of a feature the other half of its joint
   */
  Draft reshape(Examined examined, Map<String, Partner> partners) {
    Prepared prepared = prepared(examined);
    if (examined.unfit().isPresent()) {
      ObjectResult skipped = new ObjectResult.Skipped(place, examined.unfit().get());
      return new Draft(skipped, prepared.skin(), MeshEdit.NONE);
    }
    if (bound.isPresent()) {
      List<FeatureResult> left =
          examined.features().stream().map(f -> FeatureResult.left(f, bound.get())).toList();
      ObjectResult shown = new ObjectResult.Examined(place, left);
      return new Draft(shown, prepared.skin(), MeshEdit.NONE);
    }
    return reshaped(prepared, examined.features(), partners);
  }

  private Draft reshaped(Prepared prepared, List<Feature> features, Map<String, Partner> partners) {
    List<Feature> chosen =
        features.stream().filter(f -> work.settings().choice().chooses(place, f.id())).toList();
    Box3 box = prepared.skin().mesh().box();
    ObjectReshaper.Frame frame =
        new ObjectReshaper.Frame(
            placed.toPrint().inverse(), placed.printGrid(), prepared.tolerances());
    ObjectReshaper reshaper =
        new ObjectReshaper(
            prepared.workMesh(),
            new ObjectReshaper.Site(box, frame, partners),
            work.settings().limits(),
            work.reshapers(),
            new Judged(box, frame, work.settings().threads()));
    ObjectReshaper.Result result = reshaper.reshape(chosen);
    ObjectResult shown = new ObjectResult.Examined(place, outcomes(features, result));
    return new Draft(shown, prepared.skin(), result.edit());
  }

  /** Shows a draft to the observer and gets it ready to be written. */
  Done finish(Draft draft) {
    work.observer().seen(draft.result, draft.skin.mesh(), draft.edit);
    boolean examined = draft.result.fold(any -> true, skipped -> false);
    if (!examined) {
      return new Done(draft.result, Optional.empty(), Optional.empty());
    }
    boolean wished = work.settings().handling().joinVertices();
    boolean join = draft.skin.joined() && wished && bound.isEmpty();
    MeshEdit edit = placed.toObject(draft.edit);
    return new Done(
        draft.result,
        edit(join ? Joining.added(placed.object().mesh(), edit) : edit),
        draft.skin.joined() ? Optional.of(repeated(join, wished)) : Optional.empty());
  }

  private Optional<ObjectEdit> edit(MeshEdit edit) {
    return edit.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new ObjectEdit(
                placed.object(), edit, placed.grid(), mixed ? placed.uses() : List.of()));
  }

  private Notice repeated(boolean join, boolean wished) {
    return new Notice(
        "vertices-repeated",
        Notice.Level.NOTE,
        place.words(),
        join
            ? "vertices are repeated instead of shared; triangles share them now where they are"
                + " equal, and those that none uses any more stay in the list"
            : "vertices are repeated instead of shared, so the mesh is closed only by places, not"
                + " by numbers; it was examined as if they were shared, and they stay repeated"
                + (wished
                    ? ", since the object must stay as it is"
                    : ". --join-vertices shares them in the file, too"));
  }

  private static List<FeatureResult> outcomes(
      List<Feature> features, ObjectReshaper.Result result) {
    Map<String, FeatureResult> done = new HashMap<>();
    for (ObjectReshaper.FeatureChanges changes : result.features()) {
      List<Change> all = changes.changes().stream().map(ObjectTask::change).toList();
      done.put(changes.feature().id(), FeatureResult.of(changes.feature(), all));
    }
    List<FeatureResult> outcomes = new ArrayList<>();
    for (Feature feature : features) {
      FeatureResult left = FeatureResult.left(feature, Reason.notChosen());
      outcomes.add(done.getOrDefault(feature.id(), left));
    }
    return outcomes;
  }

  private static Change change(ObjectReshaper.Change change) {
    return change
        .reason()
        .map(reason -> Change.left(change.by(), reason))
        .orElseGet(
            () -> Change.reshaped(change.by(), change.profile().orElse(""), change.measures()));
  }

  /** Why the mesh cannot be examined: only a closed one with its outside outside is a solid. */
  private Optional<Notice> unfit(Skin skin) {
    if (!skin.edges().closed()) {
      return Optional.of(
          refusal(
              "mesh-open",
              "the mesh is not closed: %d edges are open and %d are shared in a wrong way; expected"
                  + " each edge between exactly two triangles that run along it in opposite"
                  + " directions (3MF Core 4.1.3.1). To do: repair the mesh in a modelling program.",
              skin.edges().openEdges(),
              skin.edges().badEdges()));
    }
    double volume = skin.mesh().volume();
    if (!(volume > 0)) {
      return Optional.of(
          refusal(
              "mesh-inside-out",
              "the mesh encloses a volume of %.3f mm3; expected triangles that run counter-clockwise"
                  + " seen from outside (3MF Core 4.1.3.1). To do: turn the mesh inside out in a"
                  + " modelling program.",
              volume));
    }
    return Optional.empty();
  }

  private Notice refusal(String code, String format, Object... values) {
    String message = String.format(Locale.ROOT, format, values);
    return new Notice(code, Notice.Level.ERROR, place.words(), message);
  }
}
