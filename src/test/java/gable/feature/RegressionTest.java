package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Expected values are derived: the data are made from known terms. */
class RegressionTest {

  /** Data y = 2 − 3 x + x², at x from 0 to 1, with weights that differ. */
  private static Regression parabola(int first, boolean[] solved) {
    Random random = new Random(1);
    var regression = new Regression(3);
    double[][] rows = new double[50][];
    for (int k = 0; k < rows.length; k++) {
      double x = k / 49.0;
      rows[k] = new double[] {1, x, x * x, 2 - 3 * x + x * x};
      regression.add(rows[k], 1 + random.nextDouble());
    }
    solved[0] = regression.solve(first);
    for (double[] row : rows) {
      regression.judge(row, 1);
    }
    return regression;
  }

  @Test
  void explainsAllThatItsTermsMake() {
    boolean[] solved = new boolean[1];
    Regression regression = parabola(3, solved);
    assertThat(solved[0]).isTrue();
    assertThat(regression.rest()).isLessThan(1e-20);
    assertThat(regression.most()).isCloseTo(2, within(1e-9));
  }

  /** The straight line nearest to x² on [0, 1] misses it by the square root of 1/180. */
  @Test
  void leavesTheRestWithFewerTerms() {
    boolean[] solved = new boolean[1];
    Regression regression = parabola(2, solved);
    assertThat(solved[0]).isTrue();
    // 50 weighted points stand for the integral; weights from 1 to 2 have the mean 1.5
    assertThat(1.5 * regression.rest()).isCloseTo(1 / 180.0, within(1e-3));
  }

  @Test
  void refusesTermsThatDependOnEachOther() {
    var regression = new Regression(2);
    for (int k = 1; k < 10; k++) {
      regression.add(new double[] {k, 2 * k, 1}, 1);
    }
    assertThat(regression.solve(2)).isFalse();
    assertThat(regression.solve(1)).isTrue();
  }
}
