package gable.pipeline;

import gable.edit.ConvexCut;
import gable.edit.ConvexCut.CutResult;
import gable.edit.FlatFacets;
import gable.edit.SlotFiller;
import gable.feature.Feature;
import gable.feature.Partner;
import gable.feature.Surroundings;
import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.plan.Cut;
import gable.plan.Intent;
import gable.plan.LeftAlone;
import gable.plan.Limits;
import gable.plan.Measure;
import gable.plan.Operation;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshape;
import gable.plan.Reshaper;
import gable.plan.ToolPlane;
import gable.plan.Variant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;

/**
 * Carries out what reshapers propose for the features of one object, one feature after the other,
 * largest diameter first, each cut proved before it counts. What cannot be made or proved is left
 * as it was, with the reason, and the others go on.
 *
 * <p>Print space throughout. One run, one thread.
 */
public final class ObjectReshaper {

  private final WorkMesh mesh;
  private final Surroundings around;
  private final Frame frame;
  private final Limits limits;
  private final List<Reshaper> reshapers;
  private final Proof proof;
  private final long budget;
  private long spent;

  /**
   * Facets near cuts that may be looked at for one object, counted once for each attempt. A part of
   * a million facets with forty bores takes one million, one with two thousand bores six; this many
   * take minutes. Work is counted, not time, so that the result is the same on every machine.
   */
  private static final long BUDGET = 1_000_000_000;

  /** Judges an edit; says what is wrong, or nothing if it is sound. */
  public interface Proof {
    /** Looks at an edit of a mesh that is meant to do something. */
    Optional<String> fault(WorkMesh before, MeshEdit edit, Intent intent);

    /**
     * Looks at an edit that is meant to take out facets without area and to change nothing else.
     */
    Optional<String> tidyFault(WorkMesh before, MeshEdit edit);
  }

  /**
   * Where the object lies and how its coordinates are written.
   *
   * @param toObject print space to object space
   * @param grid takes a point of print space to the place at which it will be written
   * @param tolerances numerical slack
   */
  public record Frame(Affine3 toObject, UnaryOperator<Vec3> grid, Tolerances tolerances) {}

  /**
   * What one reshaper did to one feature.
   *
   * @param by name of the reshaper
   * @param profile shape that it gave, empty if it left the feature alone
   * @param reason why it left it alone
   * @param measures what is to be known of it
   */
  public record Change(
      String by, Optional<String> profile, Optional<Reason> reason, List<Measure> measures) {}

  /**
   * A feature with all that was done to it.
   *
   * @param feature the feature
   * @param changes one for each reshaper whose business it is
   */
  public record FeatureChanges(Feature feature, List<Change> changes) {}

  /**
   * What became of the object.
   *
   * @param features features in the order of their finding
   * @param edit the edit of its mesh, in print space, new points on the grid
   */
  public record Result(List<FeatureChanges> features, MeshEdit edit) {}

  /**
   * What is known of an object besides its mesh.
   *
   * @param box around all its vertices, in print space
   * @param frame where it lies
   * @param partners for the id of a feature the other half of its joint
   */
  public record Site(Box3 box, Frame frame, Map<String, Partner> partners) {

    /** Copies the map. */
    public Site {
      partners = Map.copyOf(partners);
    }
  }

  /** Gets ready to work on a mesh whose features are halves of no joints. */
  public ObjectReshaper(
      WorkMesh mesh, Box3 box, Frame frame, Limits limits, List<Reshaper> reshapers, Proof proof) {
    this(mesh, new Site(box, frame, Map.of()), limits, reshapers, proof);
  }

  /** Gets ready to work on a mesh. */
  public ObjectReshaper(
      WorkMesh mesh, Site site, Limits limits, List<Reshaper> reshapers, Proof proof) {
    this(mesh, site, limits, reshapers, proof, BUDGET);
  }

  /** The same with another budget. */
  ObjectReshaper(
      WorkMesh mesh, Site site, Limits limits, List<Reshaper> reshapers, Proof proof, long budget) {
    this.budget = budget;
    this.mesh = mesh;
    this.around = new Surroundings(mesh, site.box, site.partners);
    this.frame = site.frame;
    this.limits = limits;
    this.reshapers =
        reshapers.stream()
            .sorted(Comparator.comparing(Reshaper::phase).thenComparing(Reshaper::name))
            .toList();
    this.proof = proof;
  }

  /** Works on the given features; the others of {@code all} are left without changes. */
  public Result reshape(List<Feature> features) {
    Map<Feature, List<Change>> changes = new HashMap<>();
    for (Feature feature : EditOrder.of(features, mesh.base())) {
      List<Change> ofFeature = new ArrayList<>();
      for (Reshaper reshaper : reshapers) {
        change(reshaper, feature).ifPresent(ofFeature::add);
      }
      changes.put(feature, ofFeature);
    }
    List<FeatureChanges> results =
        features.stream()
            .map(feature -> new FeatureChanges(feature, changes.getOrDefault(feature, List.of())))
            .toList();
    if (!SlotFiller.fill(mesh, frame.grid)) {
      return unfilled(results);
    }
    return new Result(results, mesh.total());
  }

  /** Places in the list of facets would stay empty: nothing of the object is changed. */
  private static Result unfilled(List<FeatureChanges> results) {
    Reason reason =
        Reason.notProved("the new surface has too few facets to keep the numbers of the old ones");
    List<FeatureChanges> left = new ArrayList<>();
    for (FeatureChanges result : results) {
      List<Change> changes =
          result.changes.stream()
              .map(
                  change ->
                      change.profile.isEmpty()
                          ? change
                          : new Change(change.by, Optional.empty(), Optional.of(reason), List.of()))
              .toList();
      left.add(new FeatureChanges(result.feature, changes));
    }
    return new Result(left, MeshEdit.NONE);
  }

  private Optional<Change> change(Reshaper reshaper, Feature feature) {
    if (spent >= budget) {
      return Optional.of(
          new Change(
              reshaper.name(), Optional.empty(), Optional.of(Reason.outOfBudget()), List.of()));
    }
    return answer(reshaper, () -> reshaper.propose(feature, around, limits))
        .map(proposal -> carryOut(reshaper, feature, proposal));
  }

  /** A plug-in may fail in any way; it costs the feature, never the file. */
  private static Optional<Proposal> answer(Reshaper by, Supplier<Optional<Proposal>> question) {
    try {
      return question.get();
    } catch (RuntimeException failure) {
      return Optional.of(new LeftAlone(Reason.reshaperFailed(by.name(), String.valueOf(failure))));
    }
  }

  private Change carryOut(Reshaper by, Feature feature, Proposal first) {
    Proposal proposal = first;
    String why = "";
    while (proposal instanceof Reshape reshape && spent < budget) {
      for (Variant variant : reshape.ladder()) {
        List<Measure> measures = new ArrayList<>(variant.measures());
        Optional<String> fault =
            attempt(feature, variant, measures, List.of())
                .flatMap(cause -> afterTakingOut(feature, variant, measures, cause));
        if (fault.isEmpty()) {
          return new Change(by.name(), Optional.of(variant.profile()), Optional.empty(), measures);
        }
        why = fault.get();
      }
      proposal = answer(by, () -> Optional.of(reshape.otherwise().get())).orElseThrow();
    }
    Reason reason =
        proposal instanceof LeftAlone left ? left.reason().because(why) : Reason.outOfBudget();
    return new Change(by.name(), Optional.empty(), Optional.of(reason), List.of());
  }

  /** A second attempt without the facets without area near the cuts, if there are any. */
  private Optional<String> afterTakingOut(
      Feature feature, Variant variant, List<Measure> measures, String first) {
    double noise = frame.tolerances.noise();
    Box3 box = Box3.EMPTY;
    for (Cut cut : variant.cuts()) {
      box = box.with(cut.tool().box());
    }
    Predicate<Vec3> near =
        point -> variant.cuts().stream().anyMatch(cut -> isNear(cut, point, noise));
    Optional<MeshEdit> tidy =
        FlatFacets.takenOut(mesh, box.grown(noise), near, frame.tolerances.coordinateGrid())
            .filter(edit -> proof.tidyFault(mesh, edit).isEmpty());
    return tidy.isEmpty()
        ? Optional.of(first)
        : attempt(feature, variant, measures, List.of(mesh.apply(tidy.get())));
  }

  private static boolean isNear(Cut cut, Vec3 point, double margin) {
    return cut.tool().planes().stream()
        .allMatch(plane -> plane.plane().signedDistance(point) <= plane.snap() + margin);
  }

  /**
   * Makes all cuts of a variant or none; what they take away or add joins the measures. If none,
   * what was done beforehand is undone as well.
   */
  private Optional<String> attempt(
      Feature feature, Variant variant, List<Measure> measures, List<WorkMesh.Undo> before) {
    List<WorkMesh.Undo> done = new ArrayList<>(before);
    double removed = 0;
    for (Cut cut : variant.cuts()) {
      EditVolume volume = new EditVolume(mesh);
      Optional<String> fault = cut(feature, cut, variant, volume, done);
      if (fault.isPresent()) {
        for (int k = done.size() - 1; k >= 0; k--) {
          mesh.undo(done.get(k));
        }
        return fault;
      }
      removed -= volume.change();
    }
    measures.add(
        removed < 0
            ? Measure.volume("added-volume", -removed)
            : Measure.volume("removed-volume", removed));
    return Optional.empty();
  }

  private Optional<String> cut(
      Feature feature, Cut cut, Variant variant, EditVolume volume, List<WorkMesh.Undo> done) {
    mesh.visit(cut.tool().box(), facet -> spent++);
    spent++;
    CutResult result = cut(cut, feature, cut.operation() == Operation.ADD);
    if (result instanceof CutResult.Impossible impossible && impossible.missed()) {
      result = cut(cut, feature, true);
    }
    if (result instanceof CutResult.Impossible impossible) {
      return Optional.of(impossible.why());
    }
    MeshEdit edit = ((CutResult.Done) result).edit();
    Optional<String> fault = proof.fault(mesh, edit, intent(feature, cut, variant));
    if (fault.isEmpty()) {
      volume.measure(edit);
      done.add(mesh.apply(edit));
    }
    return fault;
  }

  /**
   * Cuts where the tool meets what is left of the feature's wall, or also the faces that earlier
   * cuts have made of it: what is added may stand on such a face, and a slot may start from a roof.
   */
  private CutResult cut(Cut cut, Feature feature, boolean faces) {
    int[] wall = faces ? mesh.heirsAndFaces(feature.wall()) : mesh.heirs(feature.wall());
    return ConvexCut.of(
        mesh,
        cut.tool(),
        cut.operation(),
        facet -> Arrays.binarySearch(wall, facet) >= 0,
        frame.grid,
        frame.tolerances.mergeDistance());
  }

  private Intent intent(Feature feature, Cut cut, Variant variant) {
    double bridge =
        variant.measures().stream()
            .filter(measure -> measure.name().equals("bridge"))
            .mapToDouble(Measure::value)
            .findFirst()
            .orElse(0);
    double stray =
        cut.tool().planes().stream().mapToDouble(ToolPlane::snap).max().orElse(0)
            + 2 * frame.tolerances.coordinateGrid();
    return new Intent(feature, cut, limits, bridge, stray / feature.radius());
  }
}
