package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;

import gable.edit.ConvexCut;
import gable.edit.ConvexCut.CutResult;
import gable.feature.Bore;
import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.feature.Surroundings;
import gable.geom.Affine3;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.plan.Cut;
import gable.plan.Intent;
import gable.plan.Limits;
import gable.plan.Measure;
import gable.plan.Proposal;
import gable.plan.Reshape;
import gable.plan.ToolPlane;
import gable.plan.Variant;
import gable.reshaper.GableRoof;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A part with a bore, the roof that is proposed for it and the edit that cuts it. */
record Trial(Mesh mesh, WorkMesh work, MeshEdit edit, Intent intent, Judge judge) {

  private static final double GRID = 1e-6;

  /** Takes a point to the output grid of a file in millimetres that lies as it is printed. */
  static Vec3 grid(Vec3 p) {
    return new Vec3(
        Math.rint(p.x() / GRID) * GRID,
        Math.rint(p.y() / GRID) * GRID,
        Math.rint(p.z() / GRID) * GRID);
  }

  static Trial of(Mesh mesh) {
    return of(mesh, Limits.usual());
  }

  /** The first bore of a part with its first variant of a roof. */
  static Trial of(Mesh mesh, Limits limits) {
    Optional<Trial> trial = ifCut(mesh, limits);
    assertThat(trial).isPresent();
    return trial.orElseThrow();
  }

  /** The same, unless there is no roof for it or the kernel cannot cut it. */
  static Optional<Trial> ifCut(Mesh mesh) {
    return ifCut(mesh, Limits.usual());
  }

  private static Optional<Trial> ifCut(Mesh mesh, Limits limits) {
    HalfEdges halfEdges = HalfEdges.of(mesh);
    assertThat(halfEdges.closed()).isTrue();
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    List<Feature> features = FeatureFinder.find(mesh, halfEdges, tolerances).features();
    assertThat(features).isNotEmpty();
    Bore bore = (Bore) features.get(0);
    WorkMesh work = new WorkMesh(mesh, halfEdges, FacetTree.of(mesh));
    Optional<Proposal> proposal =
        new GableRoof().propose(bore, new Surroundings(work, mesh.box()), limits);
    if (!(proposal.orElseThrow() instanceof Reshape reshape)) {
      return Optional.empty();
    }
    Variant variant = reshape.ladder().get(0);
    Cut cut = variant.cuts().get(0);
    Judge judge = new Judge(mesh.box(), Affine3.IDENTITY, tolerances);
    return cut(work, cut, bore, tolerances)
        .map(edit -> new Trial(mesh, work, edit, intent(bore, variant, limits, tolerances), judge));
  }

  private static Intent intent(Bore bore, Variant variant, Limits limits, Tolerances tolerances) {
    double bridge =
        variant.measures().stream()
            .filter(measure -> measure.name().equals("bridge"))
            .mapToDouble(Measure::value)
            .findFirst()
            .orElse(0);
    Cut cut = variant.cuts().get(0);
    double stray =
        cut.tool().planes().stream().mapToDouble(ToolPlane::snap).max().orElse(0)
            + 2 * tolerances.coordinateGrid();
    return new Intent(bore, cut, limits, bridge, stray / bore.radius());
  }

  private static Optional<MeshEdit> cut(WorkMesh work, Cut cut, Bore bore, Tolerances tolerances) {
    int[] wall = bore.wall();
    CutResult result =
        ConvexCut.of(
            work,
            cut.tool(),
            cut.operation(),
            facet -> Arrays.binarySearch(wall, facet) >= 0,
            Trial::grid,
            tolerances.mergeDistance());
    return result instanceof CutResult.Done done ? Optional.of(done.edit()) : Optional.empty();
  }

  /** The edit that another cut of the same bore makes. */
  Optional<MeshEdit> cut(Cut other) {
    Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
    return cut(work, other, (Bore) intent.feature(), tolerances);
  }

  /** The mesh after the edit. */
  Mesh after() {
    EditSketch sketch = new EditSketch(edit);
    double[] points =
        Arrays.copyOf(mesh.copyOfPoints(), 3 * (mesh.vertexCount() + edit.pointCount()));
    for (int k = 0; k < 3 * edit.pointCount(); k++) {
      points[3 * mesh.vertexCount() + k] = edit.coordinate(k / 3, k % 3);
    }
    int kept = mesh.facetCount() - edit.removedCount();
    int[] corners = new int[3 * (kept + edit.facetCount())];
    int at = 0;
    for (int f = 0; f < mesh.facetCount(); f++) {
      for (int k = 0; k < 3 && !sketch.removed().contains(f); k++) {
        corners[at++] = mesh.corner(f, k);
      }
    }
    for (int[] facet : sketch.facets()) {
      for (int corner : facet) {
        corners[at++] = corner;
      }
    }
    return Mesh.of(points, corners);
  }

  Verdict verdict() {
    return judge.judge(work, edit, intent);
  }

  /** What the judge says of another edit in place of the right one. */
  Verdict verdict(MeshEdit other) {
    return judge.judge(work, other, intent);
  }
}
