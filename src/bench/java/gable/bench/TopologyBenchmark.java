package gable.bench;

import gable.geom.Box3;
import gable.geom.Vec3;
import gable.mesh.FacetTree;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
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

/** What neighbours and a search tree cost on a torus of a given number of facets. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class TopologyBenchmark {

  /** Facets of the torus, roughly. */
  @Param({"10000", "100000", "1000000"})
  public int facets;

  private Mesh mesh = Mesh.of(new double[0], new int[0]);

  /** Makes the torus. */
  @Setup
  public void build() {
    int steps = (int) Math.sqrt(facets / 2.0);
    mesh = torus(steps);
  }

  /** Pairs all half-edges. */
  @Benchmark
  public HalfEdges neighbours() {
    return HalfEdges.of(mesh);
  }

  /** Builds the tree and counts the facets in one eighth of the box. */
  @Benchmark
  public int treeAndSearch() {
    int[] found = {0};
    FacetTree tree = FacetTree.of(mesh);
    tree.visit(new Box3(Vec3.ZERO, new Vec3(30, 30, 30)), facet -> found[0]++);
    return found[0];
  }

  private static Mesh torus(int steps) {
    double[] xyz = new double[3 * steps * steps];
    int[] corners = new int[6 * steps * steps];
    for (int i = 0; i < steps; i++) {
      for (int j = 0; j < steps; j++) {
        int cell = i * steps + j;
        double around = 2 * Math.PI * i / steps;
        double tube = 2 * Math.PI * j / steps;
        double reach = 20 + 5 * Math.cos(tube);
        xyz[3 * cell] = reach * Math.cos(around);
        xyz[3 * cell + 1] = reach * Math.sin(around);
        xyz[3 * cell + 2] = 5 * Math.sin(tube);
        putCell(corners, cell, new int[] {i, j, steps});
      }
    }
    return Mesh.of(xyz, corners);
  }

  private static void putCell(int[] corners, int cell, int[] at) {
    int steps = at[2];
    int nextI = (at[0] + 1) % steps * steps;
    int nextJ = (at[1] + 1) % steps;
    int here = at[0] * steps;
    int[] quad = {here + at[1], nextI + at[1], nextI + nextJ, here + nextJ};
    int[] order = {0, 1, 2, 0, 2, 3};
    for (int k = 0; k < 6; k++) {
      corners[6 * cell + k] = quad[order[k]];
    }
  }
}
