package gable.pipeline;

import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.feature.Partner;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.WorkMesh;
import gable.pipeline.ObjectReshaper.Frame;
import gable.pipeline.ObjectReshaper.Result;
import gable.plan.Limits;
import gable.plan.Reshaper;
import java.util.List;
import java.util.Map;

/** Reshapes a mesh with every proof on, coordinates on a grid of 1e-6 mm. */
final class ProvedRun {

  private ProvedRun() {}

  static Result of(Mesh mesh, List<Reshaper> reshapers) {
    return of(mesh, reshapers, Limits.usual());
  }

  static Result of(Mesh mesh, List<Reshaper> reshapers, Limits limits) {
    return of(mesh, reshapers, limits, Map.of());
  }

  static Result of(
      Mesh mesh, List<Reshaper> reshapers, Limits limits, Map<String, Partner> partners) {
    HalfEdges halfEdges = HalfEdges.of(mesh);
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    List<Feature> features = FeatureFinder.find(mesh, halfEdges, tolerances).features();
    Frame frame = new Frame(Affine3.IDENTITY, ProvedRun::onGrid, tolerances);
    return new ObjectReshaper(
            new WorkMesh(mesh, halfEdges, FacetTree.of(mesh)),
            new ObjectReshaper.Site(mesh.box(), frame, partners),
            limits,
            reshapers,
            new Judged(mesh.box(), frame))
        .reshape(features);
  }

  private static Vec3 onGrid(Vec3 p) {
    return new Vec3(
        Math.rint(p.x() * 1e6) / 1e6, Math.rint(p.y() * 1e6) / 1e6, Math.rint(p.z() * 1e6) / 1e6);
  }
}
