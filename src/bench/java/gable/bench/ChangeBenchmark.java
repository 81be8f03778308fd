package gable.bench;

import gable.feature.Feature;
import gable.feature.FeatureFinder;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.mesh.MeshEdit;
import gable.mesh.WorkMesh;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.pipeline.Judged;
import gable.pipeline.ObjectReshaper;
import gable.pipeline.ObjectReshaper.Frame;
import gable.pipeline.ObjectReshaper.Proof;
import gable.place.PlacedObject;
import gable.place.Placements;
import gable.plan.Intent;
import gable.plan.Limits;
import gable.plan.Reshaper;
import gable.threemf.Changes;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import gable.threemf.ModelWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What the stages from the features to the new text cost on a dense part with 40 bores, warm.
 * Proving is what {@code editAndProve} takes longer than {@code edit}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 10, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(2)
public class ChangeBenchmark {

  /** Triangles of the part, roughly. */
  @Param({"100000", "1000000"})
  public int triangles;

  private Optional<Stages> stages = Optional.empty();

  /** Reads a part and finds its bores once. */
  @Setup
  public void makePart() throws IOException, PackageException {
    Path path = Files.createTempFile("dense", ".3mf");
    try {
      DensePart.write(path, triangles, 40, 1);
      try (OpcPackage source = OpcPackage.open(path, OpcLimits.DEFAULT)) {
        stages = Optional.of(new Stages(ModelPackage.read(source, ModelLimits.USUAL)));
      }
    } finally {
      Files.delete(path);
    }
  }

  /** Sorts the facets into a tree of boxes. */
  @Benchmark
  public FacetTree tree() {
    return FacetTree.of(stages.orElseThrow().mesh);
  }

  /** Makes forty roofs and believes in them. */
  @Benchmark
  public MeshEdit edit() {
    return stages.orElseThrow().edit(new Believing());
  }

  /** The same with all proofs. */
  @Benchmark
  public MeshEdit editAndProve() {
    return stages.orElseThrow().edit(stages.orElseThrow().judged());
  }

  /** Splices the edit into the text of the part. */
  @Benchmark
  public Changes splice() throws PackageException {
    return stages.orElseThrow().splice();
  }

  /** What does not change from run to run. */
  private static final class Stages {

    private final ModelPackage model;
    private final PlacedObject placed;
    private final Mesh mesh;
    private final HalfEdges halfEdges;
    private final FacetTree facets;
    private final Tolerances tolerances;
    private final List<Feature> features;
    private final List<Reshaper> reshapers =
        ServiceLoader.load(Reshaper.class).stream()
            .map(ServiceLoader.Provider::get)
            .filter(Reshaper::onByItself)
            .toList();
    private final MeshEdit edit;

    Stages(ModelPackage model) {
      this.model = model;
      this.placed = Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed().get(0);
      this.mesh = placed.printMesh();
      this.halfEdges = HalfEdges.of(mesh);
      this.facets = FacetTree.of(mesh);
      this.tolerances = Tolerances.forModel(mesh.box().reach(), 0);
      this.features = FeatureFinder.find(mesh, halfEdges, tolerances).features();
      this.edit = placed.toObject(edit(new Believing()));
    }

    Frame frame() {
      return new Frame(placed.toPrint().inverse(), placed.printGrid(), tolerances);
    }

    Proof judged() {
      return new Judged(mesh.box(), frame());
    }

    MeshEdit edit(Proof proof) {
      WorkMesh work = new WorkMesh(mesh, halfEdges, facets);
      return new ObjectReshaper(work, mesh.box(), frame(), Limits.usual(), reshapers, proof)
          .reshape(features)
          .edit();
    }

    Changes splice() throws PackageException {
      return ModelWriter.splice(model, List.of(placed.objectEdit(edit)));
    }
  }

  /** Takes every edit for sound. */
  private static final class Believing implements Proof {
    @Override
    public Optional<String> fault(WorkMesh before, MeshEdit edit, Intent intent) {
      return Optional.empty();
    }

    @Override
    public Optional<String> tidyFault(WorkMesh before, MeshEdit edit) {
      return Optional.empty();
    }
  }
}
