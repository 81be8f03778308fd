package gable.geom;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Laws of a key, and what it is for: that the hashes of edges of neighbours differ. */
class EdgeKeyTest {

  @Test
  void unlikeEdgesHaveUnlikeKeysAndMostlyUnlikeHashes() {
    Set<Long> keys = new HashSet<>();
    Set<Integer> hashes = new HashSet<>();
    Set<Integer> plain = new HashSet<>();
    for (int from = 0; from < 300; from++) {
      for (int to = 0; to < 300; to++) {
        keys.add(EdgeKey.of(from, to));
        hashes.add(Long.hashCode(EdgeKey.of(from, to)));
        plain.add(Long.hashCode((long) from << 32 | to));
      }
    }
    assertThat(keys).hasSize(300 * 300);
    assertThat(plain).hasSizeLessThan(1000);
    assertThat(hashes).hasSizeGreaterThan(300 * 300 * 99 / 100);
  }

  @Test
  void isTheSameForBothDirectionsIfWanted() {
    assertThat(EdgeKey.either(7, 3)).isEqualTo(EdgeKey.either(3, 7)).isEqualTo(EdgeKey.of(3, 7));
    assertThat(EdgeKey.of(7, 3)).isNotEqualTo(EdgeKey.of(3, 7));
  }
}
