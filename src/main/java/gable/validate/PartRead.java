package gable.validate;

import gable.threemf.ModelVisitor;
import java.util.List;

/** A model part that was walked through, with what its checkers know. */
final class PartRead {

  private final PartModel model;
  private final MeshChecks meshes;
  private final SliceChecks slices;
  private final References references;
  private final List<Runnable> last;
  private final List<Checker> checkers;
  private final Findings findings;
  private boolean whole;

  /**
   * A part that has not been read yet.
   *
   * @param root whether it is the root part
   * @param surfaces whether the meshes themselves are looked at
   */
  PartRead(String name, boolean root, boolean surfaces, Findings findings) {
    this.findings = findings;
    model = new PartModel(name, root, findings);
    meshes = new MeshChecks(surfaces, findings);
    slices = new SliceChecks(findings);
    references = new References();
    PropertyChecks properties = new PropertyChecks(model, meshes, findings);
    MaterialChecks materials = new MaterialChecks(model, findings);
    ShapeChecks shapes = new ShapeChecks(model, findings);
    last = List.of(properties::finish, materials::finish, shapes::finish);
    checkers =
        List.of(
            model,
            new CoreChecks(model, findings),
            meshes,
            new SetChecks(meshes, findings),
            new BeamChecks(model, meshes, findings),
            slices,
            references,
            properties,
            materials,
            shapes);
  }

  /** Is to be told of the elements of the part. */
  ModelVisitor visitor() {
    return new PartWalk(model.name(), checkers, findings);
  }

  /** Asks what needs the whole part. Only for a part whose XML is sound. */
  void finish() {
    whole = true;
    last.forEach(Runnable::run);
  }

  String name() {
    return model.name();
  }

  PartModel model() {
    return model;
  }

  MeshChecks meshes() {
    return meshes;
  }

  SliceChecks slices() {
    return slices;
  }

  References references() {
    return references;
  }

  /** Whether its XML could be read to the end. */
  boolean isWhole() {
    return whole;
  }
}
