package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class BesideTest {

  @Test
  void givesTheResult() {
    assertThat(Beside.start(() -> "done").result()).isEqualTo("done");
  }

  @Test
  void throwsAnErrorAsItWas() {
    OutOfMemoryError error = new OutOfMemoryError("all of it");
    Beside<String> work =
        Beside.start(
            () -> {
              throw error;
            });
    assertThatThrownBy(work::result).isSameAs(error);
  }

  @Test
  void throwsAFailureAsItWas() {
    IllegalStateException failure = new IllegalStateException("no");
    Beside<String> work =
        Beside.start(
            () -> {
              throw failure;
            });
    assertThatThrownBy(work::result).isSameAs(failure);
  }
}
