package gable.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class Affine3Test {

  @Test
  void takesRowVectorsAsTheCoreSpecificationSays() {
    // 3MF core specification 1.4, section 3.3: row vector times matrix, translation last
    Affine3 map = Affine3.of(1, 0, 0, 0, 0, 1, 0, -1, 0, 5, 6, 7);
    assertThat(map.apply(new Vec3(1, 2, 3))).isEqualTo(new Vec3(6, 3, 9));
    Affine3 turn = Affine3.of(0, 1, 0, -1, 0, 0, 0, 0, 1, 10, 20, 30);
    assertThat(turn.apply(Vec3.X)).isEqualTo(new Vec3(10, 21, 30));
  }

  @Test
  void chainsTheInnerMapFirst() {
    Affine3 inner = Affine3.of(2, 0, 0, 0, 2, 0, 0, 0, 2, 1, 0, 0);
    Affine3 outer = Affine3.of(0, 1, 0, -1, 0, 0, 0, 0, 1, 0, 0, 5);
    Vec3 p = new Vec3(1, 2, 3);
    assertThat(inner.then(outer).apply(p)).isEqualTo(outer.apply(inner.apply(p)));
  }

  @Test
  void goesBackByItsInverse() {
    Random random = new Random(7);
    for (int round = 0; round < 200; round++) {
      double[] m = random.doubles(12, -3, 3).toArray();
      Affine3 map = Affine3.of(m);
      if (map.reciprocalCondition() < 1e-3) {
        continue;
      }
      Vec3 p = new Vec3(random.nextDouble(), random.nextDouble(), random.nextDouble());
      // relative error of the inverse: condition number times a few ulps
      assertThat(map.inverse().apply(map.apply(p)).distance(p)).isCloseTo(0, within(1e-11));
    }
  }

  @Test
  void knowsSingularMaps() {
    Affine3 flat = Affine3.of(1, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0);
    assertThat(flat.reciprocalCondition()).isZero();
    assertThatThrownBy(flat::inverse).isInstanceOf(IllegalArgumentException.class);
    assertThat(Affine3.scale(-4).reciprocalCondition()).isCloseTo(1, within(1e-15));
  }

  @Test
  void laysAnyUpDirectionOnZ() {
    for (Vec3 up : new Vec3[] {Vec3.X, Vec3.Y, Vec3.Z, Vec3.Z.times(-1), new Vec3(1, -2, 0.5)}) {
      Affine3 turn = Affine3.layingUp(up);
      assertThat(turn.apply(up.unit()).distance(Vec3.Z)).isCloseTo(0, within(1e-15));
      assertThat(turn.determinant()).isCloseTo(1, within(1e-15));
    }
  }
}
