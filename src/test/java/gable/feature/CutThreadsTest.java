package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.place.PlacedObject;
import gable.place.Placements;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Threads of few facets that end in the faces of a block, made by an exact kernel from what the
 * corpus' generator draws ({@code threadStarts} by seed 41, number 1113; {@code threadCut} by seed
 * 3, number 1713, with corners that jitter by 5 micrometres). The facets that turn inwards are half
 * of the wall and tell its motion but roughly; all of the wall tells it better.
 */
class CutThreadsTest {

  /**
   * Diameters at the crests and lengths are those that were drawn. A radius is told to a 32nd of a
   * pitch, over which a flank at 60 degrees climbs by 0.05 mm; an axis that leans by a third of a
   * degree shifts either end by 0.02 mm.
   */
  @ParameterizedTest(name = "{0}")
  @CsvSource({"thread-of-three-starts, 11.48, 10.3", "thread-with-keyway, 7.84, 5.5"})
  void areSaidToBeThreads(String name, double diameter, double length) throws Exception {
    List<Feature> found = find(name);
    assertThat(found).hasSize(1);
    Bore thread = (Bore) found.get(0);
    assertThat(thread.shape()).isEqualTo(BoreShape.THREAD);
    assertThat(2 * thread.radius()).isCloseTo(diameter, within(0.1));
    assertThat(thread.length()).isCloseTo(length, within(0.05));
  }

  private static List<Feature> find(String name) throws Exception {
    Path file = Path.of(CutThreadsTest.class.getResource(name + ".3mf").toURI());
    List<Feature> features = new ArrayList<>();
    try (OpcPackage source = OpcPackage.open(file, OpcLimits.DEFAULT)) {
      ModelPackage model = ModelPackage.read(source, ModelLimits.USUAL);
      for (PlacedObject placed : Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed()) {
        Mesh mesh = placed.printMesh();
        Tolerances tolerances = Tolerances.forModel(mesh.box().reach(), 0);
        features.addAll(FeatureFinder.find(mesh, HalfEdges.of(mesh), tolerances).features());
      }
    }
    return features;
  }
}
