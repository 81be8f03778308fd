package gable.validate;

import gable.opc.PackageException;
import gable.threemf.ModelText;
import java.util.List;

/** A model part that was walked through, with what its checkers know. */
final class PartRead {

  private final PartModel model;
  private final MeshChecks meshes;
  private final SliceChecks slices;
  private final References references;
  private final List<Runnable> last;
  private final List<Checker> checkers;
  private boolean whole;

  PartRead(String name, boolean root, Findings findings) {
    model = new PartModel(name, root, findings);
    meshes = new MeshChecks(findings);
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

  /** Walks through the text; what needs the whole part is asked only if its XML is sound. */
  void read(ModelText text, Findings findings) {
    try {
      text.walk(new PartWalk(model.name(), checkers, findings));
      whole = true;
    } catch (PackageException e) {
      findings.add(e);
      return;
    }
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
