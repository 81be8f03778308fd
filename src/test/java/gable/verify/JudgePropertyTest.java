package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;

import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.Kept;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Vec3;
import gable.mesh.Mesh;
import gable.verify.Verdict.Unsound;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Over many parts: through and blind bores of 10 to 200 facets in any phase, mouths square and
 * slanted, level and tilted, near and far, with coordinates exact, rounded and in single precision.
 * What is expected is derived from how the parts are made.
 */
class JudgePropertyTest {

  private static final Affine3 LYING = Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO);

  static Mesh part(long seed) {
    Random random = new Random(seed);
    int sides = 10 + random.nextInt(random.nextInt(5) == 0 ? 190 : 40);
    double phase =
        random.nextInt(4) == 0 ? Math.PI * random.nextInt(4) / sides : 7 * random.nextDouble();
    double radius = 2 + 6 * random.nextDouble();
    boolean blind = random.nextInt(4) == 0;
    double low = random.nextInt(3) == 0 ? random.nextDouble() - 0.5 : 0;
    double high = random.nextInt(3) == 0 && !blind ? random.nextDouble() - 0.5 : 0;
    double length = 6 * radius + 10 * random.nextDouble();
    HoleBlock block =
        HoleBlock.ofHalfWidth(radius * (1.5 + 2 * random.nextDouble()))
            .slopes(low, high)
            .ring(Ring.slanted(radius, sides, phase, 0, low))
            .ring(Ring.slanted(radius, sides, phase, length, high));
    if (random.nextBoolean()) {
      block.crossed();
    }
    MeshSketch sketch = blind ? block.blind(length + 10) : block.through();
    return written(sketch.placed(LYING).placed(turn(random)), random);
  }

  /** A tilt below the slope limit, a turn about z and a place. */
  private static Affine3 turn(Random random) {
    double tilt = random.nextInt(3) == 0 ? 0.7 * random.nextDouble() : 0;
    double yaw = random.nextBoolean() ? 0 : 6 * random.nextDouble();
    double far = random.nextInt(3) == 0 ? 200 : 20;
    Affine3 tilted =
        Affine3.rows(
            Vec3.X,
            new Vec3(0, Math.cos(tilt), Math.sin(tilt)),
            new Vec3(0, -Math.sin(tilt), Math.cos(tilt)),
            Vec3.ZERO);
    Vec3 place =
        new Vec3(far * random.nextDouble(), far * random.nextDouble(), far * random.nextDouble());
    Affine3 turned =
        Affine3.rows(
            new Vec3(Math.cos(yaw), Math.sin(yaw), 0),
            new Vec3(-Math.sin(yaw), Math.cos(yaw), 0),
            Vec3.Z,
            place);
    return tilted.then(turned);
  }

  private static Mesh written(MeshSketch sketch, Random random) {
    int how = random.nextInt(4);
    if (how < 2) {
      sketch.rounded(how == 0 ? 3 : 5);
    }
    MeshSketch numbered = random.nextInt(8) == 0 ? sketch.shuffled(random) : sketch;
    return how == 2 ? MeshCheck.inSinglePrecision(numbered.mesh()) : numbered.mesh();
  }

  /**
   * Judges the cuts of many parts: what is found sound is sound as a whole, too, and what is
   * refused is found unsound in another way. The second look shares the test of two facets with the
   * judge, but looks at all facets of the result instead of those near the edit.
   */
  private static void agreeAboutAll(int from, int count) {
    int judged = 0;
    int refused = 0;
    for (int seed = from; seed < from + count; seed++) {
      Mesh part = part(seed);
      var trial = Trial.ifCut(part);
      if (trial.isEmpty()) {
        continue; // left alone, or not to be cut: the business of others
      }
      judged++;
      Verdict verdict = trial.get().verdict();
      refused += verdict instanceof Unsound ? 1 : 0;
      Mesh after = trial.get().after();
      Kept.onFailure("judge-" + seed, part, () -> agree(verdict, after));
    }
    assertThat(judged).isGreaterThan(count * 9 / 10);
    // cuts with slivers that single precision turns over do come about; they are few
    assertThat(refused).isLessThanOrEqualTo(1 + judged / 200);
  }

  private static void agree(Verdict verdict, Mesh after) {
    MeshCheck.Report whole = MeshCheck.of(after);
    MeshCheck.Report single = MeshCheck.of(MeshCheck.inSinglePrecision(after));
    if (verdict instanceof Unsound unsound) {
      boolean seen = !whole.sound() || !single.sound() || unsound.why().contains("turned over");
      assertThat(seen).as("%s", unsound).isTrue();
    } else {
      assertThat(whole.sound() && single.sound()).as("%s %s", whole, single).isTrue();
    }
  }

  @Test
  void agreesWithALookAtAllOfManyParts() {
    agreeAboutAll(0, 60);
  }

  @Test
  @Tag("slow")
  void agreesWithALookAtAllOfThousandsOfParts() {
    agreeAboutAll(1000, 5000);
  }

  @Test
  void refusesEveryCutWithOneVertexMoved() {
    int spoilt = 0;
    for (int seed = 0; seed < 100; seed++) {
      var trial = Trial.ifCut(part(seed));
      if (trial.isEmpty()) {
        continue;
      }
      Random random = new Random(seed);
      Vec3 by =
          new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian())
              .unit()
              .times(0.05);
      int point = random.nextInt(trial.get().edit().pointCount());
      EditSketch moved = new EditSketch(trial.get().edit()).move(point, by);
      Verdict verdict = trial.get().verdict(moved.edit());
      Kept.onFailure(
          "moved-" + seed, part(seed), () -> assertThat(verdict).isInstanceOf(Unsound.class));
      spoilt++;
    }
    assertThat(spoilt).isGreaterThan(80);
  }

  @Test
  void refusesEveryCutWithTwoVerticesChanged() {
    for (int seed = 0; seed < 60; seed++) {
      var trial = Trial.ifCut(part(seed));
      if (trial.isEmpty() || trial.get().edit().pointCount() < 2) {
        continue;
      }
      EditSketch changed = new EditSketch(trial.get().edit());
      Vec3 first = changed.points().get(0);
      changed.points().set(0, changed.points().get(1));
      changed.points().set(1, first);
      Verdict verdict = trial.get().verdict(changed.edit());
      Kept.onFailure(
          "changed-" + seed, part(seed), () -> assertThat(verdict).isInstanceOf(Unsound.class));
    }
  }
}
