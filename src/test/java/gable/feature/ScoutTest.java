package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.AtOnce;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.Lathe;
import gable.fixture.MeshSketch;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.HalfEdges;
import gable.mesh.Mesh;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A scout may save work and may change nothing: laws, which need no source. */
class ScoutTest {

  private static final int SIDE = 120;

  /** A block with a bore, and beside it a plate with a rough, wavy top full of hollows. */
  private static final Mesh PART = bore().add(plate()).jittered(8e-3, new Random(5)).mesh();

  private static final HalfEdges EDGES = HalfEdges.of(PART);
  private static final Tolerances TOLERANCES = Tolerances.forModel(PART.box().reach(), 0);
  private static final Surface SURFACE = new Surface(PART, EDGES, 1e-6, 0);

  private static MeshSketch bore() {
    HoleBlock block = HoleBlock.ofHalfWidth(10);
    for (int k = 0; k <= 20; k++) {
      block.ring(Ring.round(4, 100, 0.03 * k, 0.25 * k));
    }
    return block.through();
  }

  private static MeshSketch plate() {
    MeshSketch sketch = new MeshSketch();
    int row = SIDE + 1;
    for (int k = 0; k < row * row; k++) {
      int line = k / row;
      double x = 0.15 * line;
      double y = 0.15 * (k % row);
      double z = 0.5 * Math.sin(1.2 * x) * Math.cos(y);
      sketch.point(new Vec3(40 + x, 40 + y, z));
    }
    int apex = sketch.point(new Vec3(50, 50, -20));
    for (int k = 0; k < SIDE * SIDE; k++) {
      int at = row * (k / SIDE) + k % SIDE;
      sketch.quad(at, at + row, at + row + 1, at + 1);
    }
    for (int k = 0; k < SIDE; k++) {
      sketch.facet(k + 1, apex, k);
      sketch.facet(SIDE * row + k, apex, SIDE * row + k + 1);
      sketch.facet(row * k, apex, row * k + row);
      sketch.facet(row * (k + 2) - 1, apex, row * (k + 1) - 1);
    }
    return sketch;
  }

  private static int[] seeds() {
    return Seeds.of(SURFACE, Hollows.of(SURFACE, 0.12));
  }

  private static Scout scout(FacetStates states) {
    return new Scout(SURFACE, TOLERANCES, states, seeds());
  }

  @Test
  void findsTheSameWithAScoutAndWithout() {
    AtOnce aside = new AtOnce();
    Findings alone = FeatureFinder.find(PART, EDGES, TOLERANCES);
    Findings helped = FeatureFinder.find(PART, EDGES, TOLERANCES, aside);

    assertThat(alone.features()).hasSize(1);
    assertThat(helped).usingRecursiveComparison().isEqualTo(alone);
    assertThat((Integer) aside.results().get(1)).as("misses told").isGreaterThan(1000);
  }

  @Test
  void tellsWhatTheSearchWouldHaveFound() {
    FacetStates states = new FacetStates(PART.facetCount());
    Scout scout = scout(states);
    int told = scout.work().get();
    WallGrower grower = new WallGrower(SURFACE, TOLERANCES, new WallMeasure(SURFACE));
    int[] seeds = seeds();
    int seen = 0;
    for (int at = 0; at < seeds.length; at++) {
      Optional<Scout.Miss> miss = scout.ahead(at);
      seen += miss.isPresent() ? 1 : 0;
      if (at % 50 == 1) {
        boolean begins = grower.begins(seeds[at], states);
        assertThat(miss.isPresent()).isEqualTo(!begins);
        miss.ifPresent(
            m -> assertThat(m).usingRecursiveComparison().isEqualTo(Scout.Miss.of(0, grower)));
      }
    }
    assertThat(seen).isEqualTo(told);
  }

  /** Coarse rings: no wall begins there whichever way it is tried, and both ways are. */
  @Test
  void aMissIsTheSameWhetherTheWallWasToGrowOrNot() {
    Lathe lathe = Lathe.ofSides(24, 0.1);
    for (int k = 0; k <= 90; k++) {
      lathe.ring(0.25 * k, 6 + 0.8 * Math.sin(0.9 * k));
    }
    Mesh rings = lathe.sketch().flipped().mesh();
    Surface surface = new Surface(rings, HalfEdges.of(rings), 1e-6, 0);
    FacetStates states = new FacetStates(rings.facetCount());
    WallGrower one = new WallGrower(surface, TOLERANCES, new WallMeasure(surface));
    WallGrower two = new WallGrower(surface, TOLERANCES, new WallMeasure(surface));
    int misses = 0;
    for (int seed : Seeds.of(surface, Hollows.of(surface, 0.12))) {
      if (!one.begins(seed, states)) {
        assertThat(two.grow(seed, states)).isEmpty();
        assertThat(Scout.Miss.of(0, one))
            .usingRecursiveComparison()
            .isEqualTo(Scout.Miss.of(0, two));
        misses++;
      }
    }
    assertThat(misses).isPositive();
  }

  @Test
  void tellsNothingMoreOnceAFacetIsBarred() {
    FacetStates states = new FacetStates(PART.facetCount());
    Scout scout = scout(states);
    assertThat(scout.work().get()).isPositive();
    int known = (int) IntStream.range(0, 1000).filter(at -> scout.ahead(at).isPresent()).count();
    states.wall(new int[] {0});

    assertThat(known).isPositive();
    assertThat(IntStream.range(0, 1000).filter(at -> scout.ahead(at).isPresent())).isEmpty();
  }

  @Test
  void endsWithTheSearch() {
    Scout scout = scout(new FacetStates(PART.facetCount()));
    scout.end();
    assertThat(scout.work().get()).isZero();
  }

  @Test
  void doesNotLookBackBehindTheSearch() {
    FacetStates states = new FacetStates(PART.facetCount());
    int[] seeds = seeds();
    Scout scout = scout(states);
    scout.ahead(seeds.length - 1);
    assertThat(scout.work().get()).isZero();
  }
}
