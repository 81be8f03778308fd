package gable.threemf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gable.geom.Affine3;
import gable.geom.Vec3;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Derived: the step is 1e-6 mm on the plate; what is written is what is read. */
class VertexGridTest {

  @ParameterizedTest
  @CsvSource({
    "1, 6",
    "25.4, 8",
    "0.001, 3",
    "10, 7",
    "1000, 9",
    "304.8, 9",
    "0.5, 6",
    "2, 7",
    "1e-9, 0"
  })
  void hasTheDecimalsThatTheScaleAsksFor(double scale, int decimals) {
    assertThat(VertexGrid.of(Affine3.scale(scale), 100).decimals()).isEqualTo(decimals);
  }

  @Test
  void needsNoMoreDecimalsForATurn() {
    double c = 0.7071068;
    Affine3 turn = new Affine3(c, c, 0, -c, c, 0, 0, 0, 1, 5, 6, 7);
    assertThat(VertexGrid.of(turn, 100).decimals()).isEqualTo(6);
    Affine3 mirror = new Affine3(-1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0);
    assertThat(VertexGrid.of(mirror, 100).decimals()).isEqualTo(6);
  }

  @Test
  void measuresTheLargestStretchOfAMap() {
    assertThat(VertexGrid.largestScale(Affine3.IDENTITY)).isEqualTo(1);
    Affine3 stretch = new Affine3(3, 0, 0, 0, 0.5, 0, 0, 0, 2, 0, 0, 0);
    assertThat(VertexGrid.largestScale(stretch)).isCloseTo(3, within(1e-12));
    Affine3 turned = stretch.then(Affine3.layingUp(new Vec3(1, 2, 3)));
    assertThat(VertexGrid.largestScale(turned)).isCloseTo(3, within(1e-12));
    Affine3 first = Affine3.layingUp(new Vec3(3, 1, -2)).then(stretch);
    assertThat(VertexGrid.largestScale(first)).isCloseTo(3, within(1e-12));
    Affine3 shear = new Affine3(1, 0, 0, 1, 1, 0, 0, 0, 1, 0, 0, 0);
    // singular values of [[1,0],[1,1]] are the golden ratio and its inverse
    assertThat(VertexGrid.largestScale(shear)).isCloseTo((1 + Math.sqrt(5)) / 2, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 3, 6, 8, 9, 12})
  void readsBackWhatItWrites(int decimals) {
    VertexGrid grid = new VertexGrid(decimals);
    Random random = new Random(decimals);
    for (int i = 0; i < 10_000; i++) {
      double coordinate = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(15 - decimals));
      double snapped = grid.snap(coordinate);
      assertThat(Double.parseDouble(grid.text(snapped))).isEqualTo(snapped);
      assertThat(grid.snap(snapped)).isEqualTo(snapped);
      assertThat(Math.abs(snapped - coordinate))
          .isLessThanOrEqualTo(
              0.5 * Math.pow(10, -decimals) + 2 * Math.ulp(coordinate)); // product and quotient
    }
  }

  @Test
  void takesFewerDecimalsWhereCoordinatesAreLarge() {
    VertexGrid grid = VertexGrid.of(new Affine3(1e6, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0), 1e6);
    assertThat(grid.snap(1e6)).isEqualTo(1e6);
    assertThat(grid.decimals()).isLessThan(12);
  }
}
