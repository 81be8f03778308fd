package gable.verify;

import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.plan.Intent;
import gable.plan.Operation;
import gable.verify.Verdict.Evidence;
import gable.verify.Verdict.Sound;
import gable.verify.Verdict.Unsound;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * Proves edits, without knowing the code that made them: from the mesh before, the edit and what is
 * meant. An edit that fails any proof must not be made.
 *
 * <p>Print space (millimetres, radians, z up). Needs a closed mesh and an edit whose new vertices
 * lie where they will be written. What is proved is told by {@link Verdict.Proof}, how by the class
 * of each proof. Cost: near linear in the facets whose boxes meet that of the edit, and one ray
 * through the mesh.
 *
 * <p>One object, one judge; it keeps no state between judgements.
 */
public final class Judge {

  /** More than one apex on the surface is as good as impossible; the loop must end all the same. */
  private static final int APEX_ATTEMPTS = 3;

  private final Box3 box;
  private final Affine3 toObject;
  private final Slack slack;
  private final double margin;
  private final double step;
  private final UnaryOperator<Supplier<Optional<Unsound>>> beside;

  /** A judge of edits of one object who works alone; see the other constructor. */
  public Judge(Box3 box, Affine3 toObject, Tolerances tolerances) {
    this(box, toObject, tolerances, UnaryOperator.identity());
  }

  /**
   * A judge of edits of one object.
   *
   * @param box box around the object in print space
   * @param toObject print space to object space, where single precision rounds
   * @param tolerances numerical slack of the object
   * @param beside may start work at once, on another thread, and waits for it when asked; what is
   *     not asked for is not needed
   */
  public Judge(
      Box3 box,
      Affine3 toObject,
      Tolerances tolerances,
      UnaryOperator<Supplier<Optional<Unsound>>> beside) {
    this.beside = beside;
    this.box = box;
    this.toObject = toObject;
    this.slack = Slack.of(tolerances);
    this.step = SinglePrecision.step(box, toObject);
    // facets that single precision may bring together: both may move by its step at the far corner
    Affine3 back = toObject.inverse();
    double moved = 0;
    for (Vec3 corner : new Vec3[] {box.min(), box.max()}) {
      Vec3 there = toObject.apply(corner);
      double reach =
          Math.max(Math.abs(there.x()), Math.max(Math.abs(there.y()), Math.abs(there.z())));
      moved = Math.max(moved, back.applyVector(new Vec3(reach, reach, reach)).norm() * 0x1p-24);
    }
    this.margin = 4 * Math.max(moved, tolerances.coordinateGrid()) + slack.grid();
  }

  /**
   * Judges an edit.
   *
   * @param before the mesh before the edit
   * @param edit the edit
   * @param intent what it is meant to do
   */
  public Verdict judge(WorkMesh before, MeshEdit edit, Intent intent) {
    Optional<Unsound> fault = IndexProof.fault(before, edit);
    if (fault.isPresent()) {
      return fault.get();
    }
    return new Case(before, edit, intent).verdict();
  }

  /**
   * Judges an edit that takes out facets without area and is meant to change nothing else.
   *
   * @param before the mesh before the edit
   * @param edit the edit
   * @param step distance in millimetres up to which two places are one
   * @return what is wrong, or nothing if it is sound
   */
  public Optional<Unsound> judgeTidy(WorkMesh before, MeshEdit edit, double step) {
    Optional<Unsound> fault = IndexProof.fault(before, edit);
    if (fault.isPresent()) {
      return fault;
    }
    Patch patch = Patch.of(before, edit, Box3.EMPTY, margin);
    return ClosedProof.fault(patch).or(() -> TidyProof.fault(patch, edit, step));
  }

  /** One edit on trial. */
  private final class Case {

    private final WorkMesh before;
    private final MeshEdit edit;
    private final Intent intent;
    private final ToolBody tool;
    private final Patch patch;
    private final PlaceProof places;
    private final ExtentProof extent;
    private final SlopeProof slopes;

    Case(WorkMesh before, MeshEdit edit, Intent intent) {
      this.before = before;
      this.edit = edit;
      this.intent = intent;
      this.tool = ToolBody.of(intent.cut().tool(), 0);
      this.patch = Patch.of(before, edit, tool.box(), margin);
      this.places = new PlaceProof(patch, edit, tool, intent.cut().operation(), slack);
      this.extent = new ExtentProof(patch, tool, slack, wall());
      this.slopes = new SlopeProof(patch, edit, tool, places, intent);
    }

    /**
     * What is left of the feature's wall; with the faces that earlier edits have made of it where
     * something is added, which may stand on them, or where no more of the wall itself goes.
     */
    private int[] wall() {
      int[] all = intent.feature().wall();
      int[] wall = before.heirs(all);
      boolean adding = intent.cut().operation() == Operation.ADD;
      boolean goes =
          IntStream.range(0, edit.removedCount())
              .anyMatch(k -> Arrays.binarySearch(wall, edit.removed(k)) >= 0);
      return goes && !adding ? wall : before.heirsAndFaces(all);
    }

    Verdict verdict() {
      var single = new SinglePrecision(patch, toObject, step);
      Supplier<Optional<Unsound>> crossings = beside.apply(() -> crossings(single));
      Optional<Unsound> fault =
          ClosedProof.fault(patch)
              .or(() -> AreaProof.fault(patch, single, edit))
              .or(this::hangingTogether)
              .or(() -> slopes.fault(slack, box.min().z()));
      if (fault.isPresent()) {
        return fault.get();
      }
      Verdict verdict = volumeVerdict();
      return crossings.get().<Verdict>map(crossing -> crossing).orElse(verdict);
    }

    /** Reads the patch and the edit only, which nobody changes. */
    private Optional<Unsound> crossings(SinglePrecision single) {
      return CrossingProof.fault(patch, edit).or(() -> CrossingProof.fault(patch, edit, single));
    }

    private Optional<Unsound> hangingTogether() {
      Components components = new Components(patch);
      return TopologyProof.fault(patch, components)
          .or(places::fault)
          .or(() -> extent.fault(components));
    }

    private Verdict volumeVerdict() {
      VolumeProof volumes = new VolumeProof(patch, tool, places);
      for (int attempt = 1; attempt <= APEX_ATTEMPTS && volumes.apexIsBad(); attempt++) {
        ToolBody again = ToolBody.of(intent.cut().tool(), attempt);
        volumes = new VolumeProof(patch, again, places);
      }
      Optional<Unsound> fault =
          volumes.fault(before, box, intent.cut().operation(), extent.leavesSomething());
      if (fault.isEmpty()) {
        fault = ClosedForm.fault(patch, intent, tool, slack, volumes.change(), volumes.tolerance());
      }
      if (fault.isEmpty()) {
        fault = WedgeForm.fault(patch, intent, tool, slack, volumes);
      }
      return fault.isPresent() ? fault.get() : new Sound(evidence(volumes));
    }

    private Evidence evidence(VolumeProof volumes) {
      var roof = new RoofMeasure(before, edit, patch, intent.feature().axis().direction());
      return new Evidence(
          volumes.change(),
          volumes.changeInTool(),
          volumes.tolerance(),
          slopes.leastSlope(),
          slopes.bridge(),
          roof.left(box.diagonal(), slack.vertex() + tool.widestSnap()));
    }
  }
}
