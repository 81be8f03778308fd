package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CircleFitTest {

  /** Points of W. Gander, G. H. Golub, R. Strebel, BIT 34 (1994), 558–578, section 4. */
  private static final double[] GANDER = {1, 7, 2, 6, 5, 8, 7, 7, 9, 5, 3, 7};

  /** Centre and radius as printed there, digits beyond recomputed. */
  @Test
  void geometricFitGivesThePublishedCircle() {
    CircleFit circle = CircleFit.geometric(GANDER, 6);
    assertThat(circle.u()).isCloseTo(4.7397824, within(1e-6));
    assertThat(circle.v()).isCloseTo(2.9835327, within(1e-6));
    assertThat(circle.radius()).isCloseTo(4.7142260, within(1e-6));
  }

  /** Recomputed independently from Taubin's definition (1991). */
  @Test
  void algebraicFitIsThatOfTaubin() {
    CircleFit circle = CircleFit.taubin(GANDER, 6);
    assertThat(circle.u()).isCloseTo(4.613933, within(1e-6));
    assertThat(circle.v()).isCloseTo(2.795209, within(1e-6));
    assertThat(circle.radius()).isCloseTo(4.879213, within(1e-6));
  }

  /**
   * No other circle has a smaller sum of squared distances. The algebraic circles through the same
   * points are recomputed from their definitions: Kåsa's, rational, has the centre (773/163,
   * 5001/1304) and r² = 28706289/1700416; then Pratt's, Taubin's and that of a coefficient vector
   * of unit length (Gander and others, section 2).
   */
  @ParameterizedTest
  @CsvSource({
    "4.742331288, 3.835122699, 4.108761522",
    "4.615482, 2.807354, 4.911302",
    "4.613933, 2.795209, 4.879213",
    "5.379413, 7.253198, 3.037041"
  })
  void geometricFitIsBetterThanTheAlgebraicOnes(double u, double v, double radius) {
    CircleFit best = CircleFit.geometric(GANDER, 6);
    assertThat(best.cost(GANDER, 6)).isLessThan(new CircleFit(u, v, radius).cost(GANDER, 6));
  }

  /**
   * Derived: the mean distance from the centre of symmetry is exactly 4, while the mean of the
   * squares, on which Kåsa's fit goes, gives 4.0000125. So does Taubin's: by symmetry both centres
   * are the origin, and then each takes the root of the mean square as the radius.
   */
  @Test
  void pointsThatAlternateAboutACircleGiveItsRadius() {
    double[] uv = new double[16];
    for (int k = 0; k < 8; k++) {
      double radius = k % 2 == 0 ? 4.01 : 3.99;
      uv[2 * k] = radius * Math.cos(k * Math.PI / 4);
      uv[2 * k + 1] = radius * Math.sin(k * Math.PI / 4);
    }
    CircleFit circle = CircleFit.geometric(uv, 8);
    assertThat(Math.hypot(circle.u(), circle.v())).isLessThan(1e-9);
    assertThat(circle.radius()).isCloseTo(4, within(1e-9));
    CircleFit algebraic = CircleFit.taubin(uv, 8);
    assertThat(Math.hypot(algebraic.u(), algebraic.v())).isLessThan(1e-9);
    assertThat(algebraic.radius()).isCloseTo(4.0000125, within(1e-9));
  }
}
