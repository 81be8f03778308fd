package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;

import gable.geom.Vec3;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A ball tells that a half-space holds no corner only where that is so, corner by corner. */
class BallTest {

  @Test
  void isBeyondOnlyWhereEveryCornerIs() {
    Random random = new Random(7);
    int told = 0;
    for (int trial = 0; trial < 20_000; trial++) {
      double[] polygon = new double[3 * (3 + random.nextInt(6))];
      Vec3 middle = random(random).times(20);
      for (int i = 0; i < polygon.length; i += 3) {
        Vec3 corner = middle.plus(random(random));
        polygon[i] = corner.x();
        polygon[i + 1] = corner.y();
        polygon[i + 2] = corner.z();
      }
      Vec3 normal = random(random).times(Math.pow(10, random.nextInt(9) - 4));
      double offset = random.nextBoolean() ? 0 : normal.norm() * 20 * random.nextGaussian();
      if (Ball.around(polygon).isBeyond(normal, offset)) {
        told++;
        for (int i = 0; i < polygon.length; i += 3) {
          Vec3 corner = new Vec3(polygon[i], polygon[i + 1], polygon[i + 2]);
          assertThat(normal.dot(corner) - offset).isPositive();
        }
      }
    }
    assertThat(told).isBetween(5_000, 15_000); // about half of them are, but for those that touch
  }

  @Test
  void isNotBeyondAPlaneThatACornerTouches() {
    double[] triangle = {1, 0, 0, 2, 1, 0, 2, -1, 0};
    assertThat(Ball.around(triangle).isBeyond(Vec3.X, 1)).isFalse();
    assertThat(Ball.around(triangle).isBeyond(Vec3.X, 0.5)).isTrue();
  }

  private static Vec3 random(Random random) {
    return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
  }
}
