package gable.geom;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which boxes a beam meets; the answers are read off by eye. */
class BeamTest {

  private static final Box3 BOX = new Box3(new Vec3(1, 1, 1), new Vec3(2, 3, 4));

  @ParameterizedTest(name = "from {0}, {1}, {2} along {3}, {4}, {5} by {6}: {7}")
  @CsvSource({
    "0, 2, 2, 1, 0, 0, 5, true",
    "0, 2, 2, 1, 0, 0, 0.5, false",
    "0, 2, 2, -1, 0, 0, 5, false",
    "0, 4, 2, 1, 0, 0, 5, false",
    "0, 0, 0, 1, 1, 1, 5, true",
    "0, 0, 0, 1, -1, 1, 5, false",
    "1.5, 2, 2, 0, 0, 1, 0, true",
    "0, 2, 2, 1, 1e-24, -1e-24, 5, true",
    "0, 4, 2, 1, 1e-24, -1e-24, 5, false",
    "0, 3, 2, 1, 0, 0, 5, true",
  })
  void meetsWhatItRunsThrough(
      double x, double y, double z, double dx, double dy, double dz, double length, boolean meets) {
    Beam beam = new Beam(new Vec3(x, y, z), new Vec3(dx, dy, dz), length);
    assertThat(beam.meets(BOX)).isEqualTo(meets);
    assertThat(beam.meets(new float[] {0, 1, 1, 1, 2, 3, 4}, 1)).isEqualTo(meets);
  }

  /** A tree has empty boxes where its leaves do not come out even; none of them may be walked. */
  @Test
  void meetsNoEmptyBox() {
    float far = Float.POSITIVE_INFINITY;
    float[] empty = {far, far, far, -far, -far, -far};
    for (Vec3 direction : new Vec3[] {new Vec3(0.2, 0.4, 0.9), Vec3.X, new Vec3(1, 1e-24, 1e-24)}) {
      Beam beam = new Beam(Vec3.ZERO, direction, 10);
      assertThat(beam.meets(empty, 0)).isFalse();
      assertThat(beam.meets(Box3.EMPTY)).isFalse();
    }
  }
}
