package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.spi.ToolProvider;
import org.junit.jupiter.api.Test;

/** The command in the process of another program. */
class GableToolTest {

  private static final String BLOCK = "fixtures/bore/through-d8.3mf";
  private final ToolProvider tool = ToolProvider.findFirst("gable").orElseThrow();

  @Test
  void itIsFoundByItsNameAndGivesTheExitCode() {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();

    assertThat(tool.run(new PrintWriter(out), new PrintWriter(err), "inspect", BLOCK)).isZero();
    assertThat(out.toString()).contains("B1", "would be reshaped");
    assertThat(tool.run(new PrintWriter(out), new PrintWriter(err), "inspect")).isEqualTo(2);
    assertThat(err.toString()).contains("a FILE is missing");
  }

  @Test
  void aModelGoesToAStreamOfBytesButNotIntoText() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream errors = new PrintStream(err, true, StandardCharsets.UTF_8);
    String[] args = {"reshape", BLOCK, "-o", "-", "--quiet"};

    assertThat(tool.run(new PrintStream(out, true, StandardCharsets.UTF_8), errors, args)).isZero();
    assertThat(out.toByteArray()).startsWith('P', 'K');
    PrintWriter words = new PrintWriter(new StringWriter());
    assertThat(tool.run(words, words, args)).isEqualTo(4);
  }
}
