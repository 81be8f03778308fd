package gable.pipeline;

import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.feature.Findings;
import gable.geom.Tolerances;
import gable.mesh.FacetTree;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
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
 * One object the whole way: from its mesh to its features with their outcomes and the edit of its
 * mesh. A pure function of the object and the work; tasks of one file may run at the same time.
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

  Done run() {
    Mesh mesh = placed.printMesh();
    Beside<FacetTree> tree = Beside.start(() -> FacetTree.of(mesh));
    Skin skin = Skin.of(mesh);
    Optional<Notice> unfit = unfit(skin);
    if (unfit.isPresent()) {
      return untouched(new ObjectResult.Skipped(place, unfit.get()), skin);
    }
    Tolerances tolerances = Tolerances.forModel(skin.mesh().box().reach(), 0);
    Findings found =
        FeatureFinder.find(
            skin.mesh(), skin.edges(), tolerances, pins -> Beside.start(pins)::result);
    if (bound.isPresent()) {
      List<FeatureResult> left =
          found.features().stream().map(f -> FeatureResult.left(f, bound.get())).toList();
      return untouched(new ObjectResult.Examined(place, left), skin);
    }
    return reshaped(
        skin,
        skin.joined() ? FacetTree.of(skin.mesh()) : tree.result(),
        tolerances,
        found.features());
  }

  private Done untouched(ObjectResult result, Skin skin) {
    work.observer().seen(result, skin.mesh(), MeshEdit.NONE);
    return new Done(result, Optional.empty(), Optional.empty());
  }

  private Done reshaped(Skin skin, FacetTree tree, Tolerances tolerances, List<Feature> features) {
    List<Feature> chosen =
        features.stream().filter(f -> work.settings().choice().chooses(place, f.id())).toList();
    ObjectReshaper.Frame frame =
        new ObjectReshaper.Frame(placed.toPrint().inverse(), placed.printGrid(), tolerances);
    ObjectReshaper reshaper =
        new ObjectReshaper(
            new WorkMesh(skin.mesh(), skin.edges(), tree),
            skin.mesh().box(),
            frame,
            work.settings().limits(),
            work.reshapers(),
            new Judged(skin.mesh().box(), frame));
    ObjectReshaper.Result result = reshaper.reshape(chosen);
    ObjectResult shown = new ObjectResult.Examined(place, outcomes(features, result));
    work.observer().seen(shown, skin.mesh(), result.edit());
    boolean join = skin.joined() && work.settings().handling().joinVertices();
    MeshEdit edit = placed.toObject(result.edit());
    return new Done(
        shown,
        edit(join ? Joining.added(placed.object().mesh(), edit) : edit),
        skin.joined() ? Optional.of(repeated(join)) : Optional.empty());
  }

  private Optional<ObjectEdit> edit(MeshEdit edit) {
    return edit.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new ObjectEdit(
                placed.object(), edit, placed.grid(), mixed ? placed.uses() : List.of()));
  }

  private Notice repeated(boolean join) {
    return new Notice(
        "vertices-repeated",
        Notice.Level.NOTE,
        place.words(),
        join
            ? "vertices are repeated instead of shared; triangles share them now where they are"
                + " equal, and those that none uses any more stay in the list"
            : "vertices are repeated instead of shared, so the mesh is closed only by places, not"
                + " by numbers; it was examined as if they were shared, and they stay repeated."
                + " --join-vertices shares them in the file, too");
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
