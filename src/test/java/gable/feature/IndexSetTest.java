package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Against {@link LinkedHashSet}, which keeps the order of arrival too. */
class IndexSetTest {

  @Test
  void holdsWhatALinkedHashSetHolds() {
    Random random = new Random(1);
    IndexSet set = new IndexSet(1 << 24);
    for (int round = 0; round < 300; round++) {
      set.clear();
      Set<Integer> expected = new LinkedHashSet<>();
      int bound = 1 << random.nextInt(24);
      int tries = 1 << random.nextInt(14);
      for (int k = 0; k < tries; k++) {
        int index = random.nextInt(bound);
        assertThat(set.add(index)).isEqualTo(expected.add(index));
      }
      assertThat(set.toArray()).containsExactly(expected.stream().mapToInt(i -> i).toArray());
      for (int k = 0; k < 1000; k++) {
        int index = random.nextInt(bound);
        assertThat(set.contains(index)).isEqualTo(expected.contains(index));
      }
      for (int k = 0; k < set.size(); k++) {
        assertThat(set.position(set.get(k))).isEqualTo(k);
      }
    }
  }

  @Test
  void takesMany() {
    IndexSet set = new IndexSet(1 << 24);
    for (int k = 0; k < 100_000; k++) {
      assertThat(set.add(3 * k)).isTrue();
    }
    assertThat(set.size()).isEqualTo(100_000);
    assertThat(set.contains(3)).isTrue();
    assertThat(set.contains(4)).isFalse();
    assertThat(set.position(30)).isEqualTo(10);
  }

  @Test
  void isSetToGivenNumbers() {
    IndexSet set = new IndexSet(1 << 24);
    set.add(7);
    set.set(new int[] {5, 3, 5, 9}, 3);
    assertThat(set.toArray()).containsExactly(5, 3);
  }
}
