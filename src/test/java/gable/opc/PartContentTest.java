package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PartContentTest {

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void givesTheSameBytesAsOneArrayWhereverItIsCut(long seed) throws Exception {
    SplittableRandom random = new SplittableRandom(seed);
    ByteArrayOutputStream expected = new ByteArrayOutputStream();
    PartContent.Builder builder = new PartContent.Builder();
    for (int i = 0; i < 200; i++) {
      byte[] array = new byte[random.nextInt(2_000)];
      random.nextBytes(array);
      int from = random.nextInt(array.length + 1);
      int to = from + random.nextInt(array.length - from + 1);
      builder.add(array, from, to);
      expected.write(array, from, to - from);
    }
    byte[] whole = expected.toByteArray();
    PartContent content = builder.build();
    assertThat(content.size()).isEqualTo(whole.length);
    assertThat(content.toBytes()).isEqualTo(whole);
    ByteArrayOutputStream written = new ByteArrayOutputStream();
    content.writeTo(written);
    assertThat(written.toByteArray()).isEqualTo(whole);
    for (int i = 0; i < 200; i++) {
      int from = random.nextInt(whole.length);
      int count = random.nextInt(whole.length - from + 1);
      byte[] copy = new byte[count + 3];
      content.copy(from, count, copy, 3);
      assertThat(Arrays.copyOfRange(copy, 3, copy.length))
          .isEqualTo(Arrays.copyOfRange(whole, from, from + count));
    }
  }

  @Test
  void holdsNothingWhenNothingWasAdded() {
    PartContent empty = new PartContent.Builder().add(new byte[5], 2, 2).build();
    assertThat(empty.size()).isZero();
    assertThat(empty.toBytes()).isEmpty();
  }

  @Test
  void refusesRangesThatAreNotThere() {
    PartContent content = PartContent.of(new byte[10]);
    assertThatThrownBy(() -> content.copy(5, 6, new byte[6], 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new PartContent.Builder().add(new byte[3], 2, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
