package gable.verify;

import static org.assertj.core.api.Assertions.assertThat;

import gable.geom.Vec3;
import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Signs against decimal arithmetic without rounding, on points that are degenerate or nearly so.
 */
class SidesReferenceTest {

  private static BigDecimal difference(Vec3 p, Vec3 q, int axis) {
    return new BigDecimal(p.get(axis)).subtract(new BigDecimal(q.get(axis)));
  }

  private static int orientation(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
    BigDecimal sum = BigDecimal.ZERO;
    for (int axis = 0; axis < 3; axis++) {
      int next = (axis + 1) % 3;
      int last = (axis + 2) % 3;
      BigDecimal minor =
          difference(b, a, next)
              .multiply(difference(c, a, last))
              .subtract(difference(b, a, last).multiply(difference(c, a, next)));
      sum = sum.add(minor.multiply(difference(d, a, axis)));
    }
    return sum.signum();
  }

  private static int turn(Vec3 a, Vec3 b, Vec3 c, int axis) {
    int u = (axis + 1) % 3;
    int v = (axis + 2) % 3;
    return difference(b, a, u)
        .multiply(difference(c, a, v))
        .subtract(difference(b, a, v).multiply(difference(c, a, u)))
        .signum();
  }

  /** A coordinate from few values, some of them with a digit too many or very small or large. */
  private static double coordinate(Random random, int kind) {
    double base = random.nextInt(4) * (kind == 0 ? 1 : 0.1);
    return switch (kind) {
      case 0, 1 -> base;
      case 2 -> base + (random.nextInt(3) - 1) * Math.ulp(base);
      case 3 -> base * (random.nextInt(6) == 0 ? 1e-100 : 1);
      default -> 1000 + base;
    };
  }

  private static Vec3 point(Random random, int kind) {
    return new Vec3(coordinate(random, kind), coordinate(random, kind), coordinate(random, kind));
  }

  /** A point that lies, up to rounding, in the plane or on the line of others. */
  private static Vec3 between(Random random, Vec3 a, Vec3 b, Vec3 c) {
    double s = random.nextDouble();
    double t = random.nextInt(2) * random.nextDouble();
    return a.plus(b.minus(a).times(s)).plus(c.minus(a).times(t));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4})
  void agreeWithDecimalArithmetic(int kind) {
    Random random = new Random(kind);
    int zeros = 0;
    for (int round = 0; round < 6000; round++) {
      Vec3 a = point(random, kind);
      Vec3 b = point(random, kind);
      Vec3 c = point(random, kind);
      Vec3 d = random.nextBoolean() ? point(random, kind) : between(random, a, b, c);
      int expected = orientation(a, b, c, d);
      zeros += expected == 0 ? 1 : 0;
      assertThat(Sides.of(a, b, c, d)).as("%s %s %s %s", a, b, c, d).isEqualTo(expected);
      int axis = random.nextInt(3);
      assertThat(Sides.turn(a, b, d, axis)).isEqualTo(turn(a, b, d, axis));
    }
    assertThat(zeros).isBetween(60, 5700);
  }
}
