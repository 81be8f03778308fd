package gable.bench;

import gable.feature.FeatureFinder;
import gable.feature.Findings;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.place.Placements;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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

/** What each stage up to the features costs on a dense part with 40 bores, warm. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(2)
public class StagesBenchmark {

  /** Triangles of the part, roughly. */
  @Param({"10000", "100000", "1000000"})
  public int triangles;

  private byte[] file = {};
  private Mesh mesh = Mesh.of(new double[0], new int[0]);
  private HalfEdges halfEdges = HalfEdges.of(mesh);

  /** Writes the part and reads it once. */
  @Setup
  public void makePart() throws IOException, PackageException {
    Path path = Files.createTempFile("dense", ".3mf");
    try {
      DensePart.write(path, triangles, 40, 1);
      file = Files.readAllBytes(path);
    } finally {
      Files.delete(path);
    }
    mesh = place(read()).placed().get(0).printMesh();
    halfEdges = HalfEdges.of(mesh);
  }

  /** Opens the package, inflates and parses its model part. */
  @Benchmark
  public ModelPackage read() throws IOException, PackageException {
    try (OpcPackage source = OpcPackage.open(file, OpcLimits.DEFAULT)) {
      return ModelPackage.read(source, ModelLimits.USUAL);
    }
  }

  /** Pairs the half-edges. */
  @Benchmark
  public HalfEdges pair() {
    return HalfEdges.of(mesh);
  }

  /** Finds and measures the bores. */
  @Benchmark
  public Findings find() {
    return FeatureFinder.find(mesh, halfEdges, Tolerances.forModel(500, 1e-5));
  }

  private static Placements place(ModelPackage model) {
    return Placements.of(model, Vec3.Z, ModelLimits.USUAL);
  }
}
