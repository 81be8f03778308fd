package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Reference: sorting. */
class SelectionTest {

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 10, 99, 1000})
  void givesWhatSortingGives(int count) {
    Random random = new Random(count);
    for (int kinds : new int[] {1, 2, 7, 1_000_000}) { // few kinds: many values are equal
      double[] values = random.ints(count, 0, kinds).asDoubleStream().toArray();
      double[] sorted = values.clone();
      Arrays.sort(sorted);
      assertThat(Selection.median(values, count)).isEqualTo(sorted[count / 2]);
      assertThat(Selection.median(sorted, count)).isEqualTo(sorted[count / 2]);
    }
  }
}
