package gable.geom;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Laws of determinants, tried where floating point alone gives the wrong sign. */
class PredicatesTest {

  @Test
  void tellsProductsApartThatDifferByLessThanRounding() {
    double a = 1 + 0x1p-30;
    // a * a = 1 + 2^-29 + 2^-60, whose last term a double drops
    assertThat(Predicates.det2(a, 1 + 0x1p-29, 1, a)).isEqualTo(1);
    assertThat(Predicates.det2(a, a, a, a)).isZero();
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void swapsSignWhenRowsAreSwapped(long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 2000; round++) {
      Vec3 a = nearPlane(random);
      Vec3 b = nearPlane(random);
      Vec3 c = nearPlane(random);
      int sign = Predicates.det3(a, b, c);
      assertThat(Predicates.det3(b, a, c)).isEqualTo(-sign);
      assertThat(Predicates.det3(b, c, a)).isEqualTo(sign);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void pointsOfOneLineDoNotTurn(long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 2000; round++) {
      // small whole numbers times a power of two: sums and products are exact
      double dx = random.nextInt(-100, 100);
      double dy = random.nextInt(-100, 100);
      int k = random.nextInt(1, 50);
      assertThat(Predicates.orient2d(7, 9, 7 + dx, 9 + dy, 7 + k * dx, 9 + k * dy)).isZero();
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void sideOfAPlaneFollowsTheLastPointByOneUlp(long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 500; round++) {
      double z = 0.1 + random.nextDouble();
      Vec3 a = new Vec3(random.nextDouble(), random.nextDouble(), z);
      Vec3 b = a.plus(new Vec3(1, 0, 0));
      Vec3 c = a.plus(new Vec3(0, 1, 0));
      Vec3 above = new Vec3(random.nextDouble(), random.nextDouble(), Math.nextUp(z));
      Vec3 below = new Vec3(random.nextDouble(), random.nextDouble(), Math.nextDown(z));
      assertThat(Predicates.orient3d(a, b, c, above)).isEqualTo(1);
      assertThat(Predicates.orient3d(a, b, c, below)).isEqualTo(-1);
      assertThat(Predicates.orient3d(a, b, c, new Vec3(3, 4, z))).isZero();
    }
  }

  /**
   * Against exact decimals, with points on one line but for a last place, of like and unlike size.
   */
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void turnsAsExactDecimalsDo(long seed) {
    Random random = new Random(seed);
    int[] seen = new int[3];
    for (int round = 0; round < 5000; round++) {
      double far = Math.scalb(1.0, random.nextInt(-12, 12));
      double[] p = new double[6];
      for (int axis = 0; axis < 2; axis++) {
        p[axis] = decimal(100 * random.nextDouble());
        p[2 + axis] = decimal(p[axis] + far * random.nextDouble());
        double between = p[axis] + (p[2 + axis] - p[axis]) * random.nextInt(0, 5) / 4;
        p[4 + axis] = random.nextBoolean() ? between : Math.nextUp(between);
      }
      int sign = Predicates.orient2d(p[0], p[1], p[2], p[3], p[4], p[5]);
      assertThat(sign).isEqualTo(turn(p));
      seen[sign + 1]++;
    }
    assertThat(seen).doesNotContain(0);
  }

  @Test
  void productsThatVanishOrOverflowAreComparedAllTheSame() {
    double tiny = 0x1p-600;
    assertThat(Predicates.det2(tiny, tiny, tiny, 2 * tiny)).isEqualTo(1);
    assertThat(Predicates.det2(tiny, 2 * tiny, tiny, tiny)).isEqualTo(-1);
    assertThat(Predicates.det2(0, tiny, tiny, 1)).isEqualTo(-1);
    assertThat(Predicates.det2(0, tiny, 0, 1)).isZero();
    double huge = 0x1p600;
    assertThat(Predicates.det2(huge, huge, huge, Math.nextUp(huge))).isEqualTo(1);
  }

  private static double decimal(double value) {
    return Math.rint(value * 1e6) / 1e6;
  }

  private static int turn(double[] p) {
    return difference(p[0], p[4])
        .multiply(difference(p[3], p[5]))
        .compareTo(difference(p[1], p[5]).multiply(difference(p[2], p[4])));
  }

  private static BigDecimal difference(double a, double b) {
    return new BigDecimal(a).subtract(new BigDecimal(b));
  }

  private static Vec3 nearPlane(Random random) {
    double x = random.nextInt(-4, 5);
    double y = random.nextInt(-4, 5);
    return new Vec3(x, y, x + y + random.nextInt(-1, 2) * 0x1p-52);
  }
}
