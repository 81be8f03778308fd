package gable.mesh;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.geom.Box3;
import gable.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Reference: every facet is asked. */
class FacetTreeTest {

  private static MeshSketch part() {
    HoleBlock block = HoleBlock.ofHalfWidth(10);
    for (int k = 0; k <= 30; k++) {
      block.ring(Ring.round(4, 50, 0.03 * k, 0.5 * k));
    }
    return block.through();
  }

  private static Mesh soup(Random random) {
    MeshSketch sketch = new MeshSketch();
    for (int k = 0; k < 500; k++) {
      Vec3 at = point(random, 20);
      int a = sketch.point(at);
      int b = sketch.point(at.plus(point(random, 2)));
      int c = sketch.point(at.plus(point(random, 2)));
      sketch.facet(a, b, c);
    }
    return sketch.mesh();
  }

  private static Vec3 point(Random random, double reach) {
    return new Vec3(
        reach * (2 * random.nextDouble() - 1),
        reach * (2 * random.nextDouble() - 1),
        reach * (2 * random.nextDouble() - 1));
  }

  private static void checkBoxes(Mesh mesh, Random random) {
    FacetTree tree = FacetTree.of(mesh);
    for (int round = 0; round < 50; round++) {
      Box3 box = Box3.EMPTY.with(point(random, 16)).with(point(random, 16));
      List<Integer> found = new ArrayList<>();
      tree.visit(box, found::add);
      List<Integer> expected = new ArrayList<>();
      for (int facet = 0; facet < mesh.facetCount(); facet++) {
        if (meets(mesh.facetBox(facet), box)) {
          expected.add(facet);
        }
      }
      assertThat(found).containsExactlyInAnyOrderElementsOf(expected);
    }
  }

  private static boolean meets(Box3 one, Box3 other) {
    for (int k = 0; k < 3; k++) {
      if (one.min().get(k) > other.max().get(k) || other.min().get(k) > one.max().get(k)) {
        return false;
      }
    }
    return true;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void findsWhatABoxMeetsInAnOrderedList(long seed) {
    checkBoxes(part().mesh(), new Random(seed));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void findsWhatABoxMeetsInAShuffledList(long seed) {
    Random random = new Random(seed);
    checkBoxes(part().shuffled(random).mesh(), random);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void findsWhatABoxMeetsInASoup(long seed) {
    Random random = new Random(seed);
    checkBoxes(soup(random), random);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void missesNoFacetThatARayPierces(long seed) {
    Random random = new Random(seed);
    Mesh mesh = soup(random);
    FacetTree tree = FacetTree.of(mesh);
    for (int facet = 0; facet < mesh.facetCount(); facet++) {
      Vec3 middle =
          mesh.point(mesh.corner(facet, 0))
              .plus(mesh.point(mesh.corner(facet, 1)))
              .plus(mesh.point(mesh.corner(facet, 2)))
              .times(1 / 3.0);
      Vec3 from = point(random, 30);
      List<Integer> found = new ArrayList<>();
      tree.visitAlong(from, middle.minus(from), 1.01, found::add);
      assertThat(found).contains(facet).doesNotHaveDuplicates();
    }
  }

  @Test
  void anEmptyMeshHoldsNothing() {
    FacetTree tree = FacetTree.of(Mesh.of(new double[0], new int[0]));
    List<Integer> found = new ArrayList<>();
    tree.visit(Box3.EMPTY.with(Vec3.ZERO).with(Vec3.X), found::add);
    assertThat(found).isEmpty();
  }

  @Test
  void aListInOrderIsNotSorted() {
    FacetBlocks ordered = FacetBlocks.of(part().mesh());
    assertThat(ordered.facet(17)).isEqualTo(17);
    assertThat(ordered.mortonOrder().length).isLessThan(part().mesh().facetCount() / 3);
  }

  @Test
  void aShuffledListMakesBlocksToo() {
    Mesh mesh = part().shuffled(new Random(5)).mesh();
    assertThat(FacetBlocks.of(mesh).mortonOrder().length).isLessThan(mesh.facetCount() / 2);
  }
}
