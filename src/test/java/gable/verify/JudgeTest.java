package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.feature.Bore;
import gable.fixture.HoleBlock;
import gable.fixture.HoleBlock.Ring;
import gable.fixture.MeshSketch;
import gable.geom.Affine3;
import gable.geom.Box3;
import gable.geom.Plane;
import gable.geom.Tolerances;
import gable.geom.Vec3;
import gable.mesh.MeshEdit;
import gable.plan.ConvexTool;
import gable.plan.Cut;
import gable.plan.Intent;
import gable.plan.Limits;
import gable.plan.Operation;
import gable.plan.ToolPlane;
import gable.verify.Verdict.Evidence;
import gable.verify.Verdict.Proof;
import gable.verify.Verdict.Sound;
import gable.verify.Verdict.Unsound;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Sound edits pass, and an edit spoilt in one way is refused by the proof that is there for it. The
 * expected numbers are derived: the blocks are made from them.
 */
class JudgeTest {

  /** Takes the frame of a block (hole along w) to print space: w becomes −y, v becomes z. */
  private static final Affine3 LYING = Affine3.rows(Vec3.X, Vec3.Z, new Vec3(0, -1, 0), Vec3.ZERO);

  private static final int SIDES = 32;

  static MeshSketch block(double half) {
    return HoleBlock.ofHalfWidth(half)
        .ring(Ring.round(4, SIDES, Math.PI / 2, 0))
        .ring(Ring.round(4, SIDES, Math.PI / 2, 20))
        .through()
        .placed(LYING);
  }

  static Trial trial() {
    return Trial.of(block(15).mesh());
  }

  static void assertRefused(Verdict verdict, Proof proof, String words) {
    assertThat(verdict).isInstanceOf(Unsound.class);
    assertThat(((Unsound) verdict).proof()).isEqualTo(proof);
    assertThat(((Unsound) verdict).why()).contains(words);
  }

  private static Evidence evidence(Verdict verdict) {
    assertThat(verdict).isInstanceOf(Sound.class);
    return ((Sound) verdict).evidence();
  }

  /** A new vertex on the ridge: the highest. */
  static int ridge(Trial trial) {
    int best = 0;
    for (int k = 1; k < trial.edit().pointCount(); k++) {
      if (trial.edit().coordinate(k, 2) > trial.edit().coordinate(best, 2) + 1e-5) {
        best = k;
      }
    }
    return best;
  }

  static int facetWith(MeshEdit edit, int vertex) {
    for (int k = 0; k < edit.facetCount(); k++) {
      for (int c = 0; c < 3; c++) {
        if (edit.corner(k, c) == vertex) {
          return k;
        }
      }
    }
    throw new AssertionError("no facet with vertex " + vertex);
  }

  @Test
  void acceptsARoofAndMeasuresIt() {
    Evidence evidence = evidence(trial().verdict());
    // 32-gon of radius 4 with a vertex on top, 20 long: area 3.514219 R-free form, derived in the
    // table of tessellated bores (support vertices at ±45 degrees): A = R² (sin 45 / cos 45 − 4
    // sin(2π/32)) with m = 8 edges
    double area = 16 * (1 - 4 * Math.sin(2 * Math.PI / 32));
    assertThat(evidence.volumeChange()).isCloseTo(-20 * area, within(1e-4));
    assertThat(evidence.volumeInTool()).isCloseTo(-20 * area, within(1e-4));
    assertThat(evidence.leastSlope()).isCloseTo(Math.PI / 4, within(1e-5));
    assertThat(evidence.bridge()).isZero();
    // the ridge is at 4 / cos 45, the top of the block at 15
    assertThat(evidence.roofLeft()).isPresent();
    assertThat(evidence.roofLeft().getAsDouble()).isCloseTo(15 - 4 * Math.sqrt(2), within(1e-5));
  }

  @Test
  void acceptsARoofOverABoreWithALoosePinAndLeavesThePin() {
    // the pin's top is at 3.5, above the chord between the feet of the roof at 2.83
    MeshSketch sketch = block(15);
    int[] near = new int[SIDES];
    int[] far = new int[SIDES];
    for (int k = 0; k < SIDES; k++) {
      double angle = 2 * Math.PI * k / SIDES;
      Vec3 p = new Vec3(3.5 * Math.sin(angle), 3, 3.5 * Math.cos(angle));
      near[k] = sketch.point(p);
      far[k] = sketch.point(new Vec3(p.x(), -23, p.z()));
    }
    for (int k = 0; k < SIDES; k++) {
      int next = (k + 1) % SIDES;
      sketch.quad(near[k], far[k], far[next], near[next]);
      if (k > 0 && next > 0) {
        sketch.facet(near[0], near[k], near[next]);
        sketch.facet(far[0], far[next], far[k]);
      }
    }
    Trial trial = Trial.of(sketch.mesh());
    int blockFacets = block(15).mesh().facetCount();
    for (int k = 0; k < trial.edit().removedCount(); k++) {
      assertThat(trial.edit().removed(k)).isLessThan(blockFacets);
    }
    assertThat(evidence(trial.verdict()).volumeChange())
        .isCloseTo(evidence(trial().verdict()).volumeChange(), within(1e-4));
  }

  @Test
  void acceptsARibAddedInsideTheBoreAndRefusesItAsACut() {
    Trial trial = trial();
    Bore bore = (Bore) trial.intent().feature();
    List<ToolPlane> planes =
        List.of(
            plane(Vec3.Z, -3), // top of the rib, in the bore
            plane(Vec3.Z.times(-1), 5), // below the wall, in the solid
            plane(Vec3.X, 0.7),
            plane(Vec3.X.times(-1), 0.6),
            plane(Vec3.Y, -5),
            plane(Vec3.Y.times(-1), 15));
    Cut cut = new Cut(Operation.ADD, ConvexTool.of(planes, new Vec3(0, -10, -4), 30));
    Intent intent = new Intent(bore, cut, Limits.usual(), 0, 0);
    MeshEdit edit = trial.cut(cut).orElseThrow();
    Evidence evidence = evidence(trial.judge().judge(trial.work(), edit, intent));
    // section of the rib above the 32-gon with a corner at the bottom: its first edges fall from
    // v = −4 by a = π/32 to either side, u up to 4 sin(2a) = 0.78, so both sides end on them
    double rise = Math.tan(Math.PI / 32);
    double area = 1.3 * (4 - 3) - rise * (0.7 * 0.7 + 0.6 * 0.6) / 2;
    assertThat(evidence.volumeChange()).isCloseTo(10 * area, within(1e-4));
    assertThat(evidence.volumeInTool()).isCloseTo(10 * area, within(1e-4));

    Cut other = new Cut(Operation.SUBTRACT, cut.tool());
    Intent wrong = new Intent(bore, other, Limits.usual(), 0, 0);
    Verdict verdict = trial.judge().judge(trial.work(), edit, wrong);
    assertRefused(verdict, Proof.PLACE, "faces the wrong way");
  }

  private static ToolPlane plane(Vec3 normal, double offset) {
    return new ToolPlane(new Plane(normal, offset), 0, ToolPlane.Role.FLANK);
  }

  @Test
  void acceptsTheWritingOfARoofInAnObjectThatLiesMirroredAndScaled() {
    Trial trial = trial();
    Affine3 toObject = Affine3.of(0, -0.05, 0, 0.05, 0, 0, 0, 0, -0.05, 3, 4, 5);
    Tolerances tolerances = Tolerances.forModel(trial.mesh().box().reach(), 0);
    Judge judge = new Judge(trial.mesh().box(), toObject, tolerances);
    assertThat(judge.judge(trial.work(), trial.edit(), trial.intent())).isInstanceOf(Sound.class);
  }

  @Test
  void refusesANewVertexMovedByATwentiethOfAMillimetre() {
    Trial trial = trial();
    for (int point = 0; point < trial.edit().pointCount(); point++) {
      for (Vec3 by : List.of(Vec3.X, Vec3.Y, Vec3.Z)) {
        for (double distance : new double[] {0.05, -0.05}) {
          EditSketch moved = new EditSketch(trial.edit()).move(point, by.times(distance));
          assertThat(trial.verdict(moved.edit())).isInstanceOf(Unsound.class);
        }
      }
    }
    EditSketch raised = new EditSketch(trial.edit()).move(ridge(trial), new Vec3(0, 0, 0.05));
    assertRefused(trial.verdict(raised.edit()), Proof.PLACE, "beyond plane");
  }

  @Test
  void refusesTheCutOfAnotherTool() {
    Trial trial = trial();
    for (Vec3 by : List.of(Vec3.X, Vec3.Z)) {
      for (double distance : new double[] {0.05, -0.05}) {
        Intent other = moved(trial.intent(), by.times(distance));
        Verdict verdict = trial.judge().judge(trial.work(), trial.edit(), other);
        assertRefused(verdict, Proof.PLACE, "tool");
      }
    }
  }

  private static Intent moved(Intent intent, Vec3 by) {
    List<ToolPlane> planes =
        intent.cut().tool().planes().stream()
            .map(
                p -> new ToolPlane(p.plane().moved(p.plane().normal().dot(by)), p.snap(), p.role()))
            .toList();
    Box3 box = intent.cut().tool().box();
    ConvexTool tool = ConvexTool.of(planes, box.min().plus(by), 2 * box.diagonal());
    return new Intent(
        intent.feature(),
        new Cut(intent.cut().operation(), tool),
        intent.limits(),
        intent.bridge(),
        intent.slopeSlack());
  }

  @Test
  void refusesToDoNothing() {
    Trial trial = trial();
    assertRefused(trial.verdict(new EditSketch().edit()), Proof.EXTENT, "of the wall is left");
  }

  @Test
  void refusesAChangeBesidesTheFeature() {
    Trial trial = trial();
    EditSketch more = new EditSketch(trial.edit());
    int outside = 0;
    while (trial.work().facetNormal(outside).unit().distance(new Vec3(0, 0, -1)) > 1e-9) {
      outside++;
    }
    more.removed().add(outside);
    more.removed().sort(Integer::compare);
    int middle = trial.work().vertexCount() + more.points().size();
    Vec3 sum = Vec3.ZERO;
    for (int k = 0; k < 3; k++) {
      int a = trial.work().corner(outside, k);
      sum = sum.plus(trial.work().point(a).times(1.0 / 3));
      more.facet(a, trial.work().corner(outside, (k + 1) % 3), middle, outside, false);
    }
    more.points().add(new Vec3(sum.x(), sum.y(), trial.mesh().box().min().z()));
    assertRefused(trial.verdict(more.edit()), Proof.EXTENT, "does not hang together");
  }

  @Test
  void refusesARoofOneDegreeTooFlat() {
    Limits flatter = Limits.usual().withSlope(Math.toRadians(44));
    Trial trial = Trial.of(block(15).mesh(), flatter);
    assertThat(trial.verdict()).isInstanceOf(Sound.class);
    Intent intent = trial.intent();
    Intent strict =
        new Intent(
            intent.feature(), intent.cut(), Limits.usual(), intent.bridge(), intent.slopeSlack());
    Verdict verdict = trial.judge().judge(trial.work(), trial.edit(), strict);
    assertRefused(verdict, Proof.SLOPE, "hangs at 44.0000 degrees");
  }

  @Test
  void refusesABridgeWiderThanMeantOrAllowed() {
    Trial trial = Trial.of(block(6.5).mesh());
    Evidence evidence = evidence(trial.verdict());
    assertThat(evidence.bridge())
        .isGreaterThan(0.1)
        .isCloseTo(trial.intent().bridge(), within(1e-3));
    Intent intent = trial.intent();
    Intent narrower =
        new Intent(
            intent.feature(),
            intent.cut(),
            intent.limits(),
            intent.bridge() - 0.05,
            intent.slopeSlack());
    Verdict verdict = trial.judge().judge(trial.work(), trial.edit(), narrower);
    assertRefused(verdict, Proof.SLOPE, "bridge spans");
  }

  @Test
  void refusesARoofThatCrossesAnotherShell() {
    // a small loose cube that sticks through the flank, away from the middle of the roof
    MeshSketch sketch = block(15);
    int[] corners = new int[8];
    for (int k = 0; k < 8; k++) {
      corners[k] =
          sketch.point(
              new Vec3(
                  1.3 + ((k & 1) == 0 ? 0 : 0.4),
                  -1.8 + ((k & 2) == 0 ? 0 : 0.4),
                  4.1 + ((k & 4) == 0 ? 0 : 0.4)));
    }
    sketch.quad(corners[0], corners[2], corners[3], corners[1]);
    sketch.quad(corners[4], corners[5], corners[7], corners[6]);
    sketch.quad(corners[0], corners[1], corners[5], corners[4]);
    sketch.quad(corners[2], corners[6], corners[7], corners[3]);
    sketch.quad(corners[0], corners[4], corners[6], corners[2]);
    sketch.quad(corners[1], corners[3], corners[7], corners[5]);
    Trial trial = Trial.of(sketch.mesh());
    assertRefused(trial.verdict(), Proof.CROSSING, "meet where they must not");
  }
}
