package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class MainTest {

  @Test
  void aCallWithoutACommandPrintsTheUsageAndIsAWrongCall() {
    ByteArrayOutputStream err = new ByteArrayOutputStream();

    int code = Main.run(new String[0], new PrintStream(err, true, StandardCharsets.UTF_8));

    assertThat(code).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("usage: gable");
  }
}
