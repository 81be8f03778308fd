package gable.pipeline;

import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.pipeline.ObjectReshaper.Frame;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Intent;
import gable.plan.Limits;
import gable.plan.Reshaper;
import gable.verify.Judge;
import gable.verify.Verdict;
import java.util.List;
import java.util.Optional;

/** Reshapes a mesh with every proof on and the usual limits, coordinates on a grid of 1e-6 mm. */
final class ProvedRun {

  private ProvedRun() {}

  static Result of(Mesh mesh, List<Reshaper> reshapers) {
    HalfEdges halfEdges = HalfEdges.of(mesh);
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    List<Feature> features = FeatureFinder.find(mesh, halfEdges, tolerances).features();
    Judge judge = new Judge(mesh.box(), Affine3.IDENTITY, tolerances);
    return new ObjectReshaper(
            new WorkMesh(mesh, halfEdges, FacetTree.of(mesh)),
            mesh.box(),
            new Frame(Affine3.IDENTITY, ProvedRun::onGrid, tolerances),
            Limits.usual(),
            reshapers,
            new Judged(judge, tolerances))
        .reshape(features);
  }

  private record Judged(Judge judge, Tolerances tolerances) implements ObjectReshaper.Proof {
    @Override
    public Optional<String> fault(WorkMesh before, MeshEdit edit, Intent intent) {
      return judge
          .judge(before, edit, intent)
          .fold(sound -> Optional.empty(), unsound -> Optional.of(unsound.why()));
    }

    @Override
    public Optional<String> tidyFault(WorkMesh before, MeshEdit edit) {
      return judge.judgeTidy(before, edit, tolerances.coordinateGrid()).map(Verdict.Unsound::why);
    }
  }

  private static Vec3 onGrid(Vec3 p) {
    return new Vec3(
        Math.rint(p.x() * 1e6) / 1e6, Math.rint(p.y() * 1e6) / 1e6, Math.rint(p.z() * 1e6) / 1e6);
  }
}
