package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.cli.Option;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Help, manual and completions, which come from one grammar. */
class ManualTest {

  @TempDir private Path temporary;

  @Test
  void theHelpFitsAScreen() {
    // decision: what a newcomer reads in a minute, on a terminal of 90 columns
    assertThat(Call.of("--help").text().lines().toList())
        .hasSizeLessThan(45)
        .allMatch(line -> line.length() <= 90);
  }

  @Test
  void theManualNamesEveryCommandAndOptionWithItsWords() {
    String page = Call.of("manual").text().replace("\\-", "-");

    for (Syntax command : Grammar.commands()) {
      assertThat(page).contains(".SS " + command.name() + "\n").contains(command.description());
      for (Option option : command.options()) {
        assertThat(page).contains("--" + option.getLongOpt()).contains(option.getDescription());
      }
    }
    assertThat(page).startsWith(".TH GABLE 1 ").doesNotContain("\n'");
  }

  @ParameterizedTest
  @ValueSource(strings = {"bash", "zsh"})
  void completionsNameEveryCommandAndOption(String shell) {
    String script = Call.of("completion", shell).text();

    for (Syntax command : Grammar.commands()) {
      assertThat(script).contains(command.name() + ")");
      for (Option option : command.options()) {
        assertThat(script).contains("--" + option.getLongOpt());
      }
    }
  }

  @Test
  void noOtherShellIsPretended() {
    assertThat(Call.of("completion", "tcsh").code()).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource({
    "gable ins, inspect",
    "gable reshape --sl, --slope",
    "gable preview --format m, markdown",
    "gable catalogue --fail-on re, rejected",
    "gable reshape pom.x, pom.xml"
  })
  void bashCompletesWhatWasBegun(String begun, String whole) throws Exception {
    Path bash = Path.of("/bin/bash");
    assumeTrue(Files.isExecutable(bash), "there is no bash");
    Path script = temporary.resolve("gable.bash");
    Files.writeString(script, Call.of("completion", "bash").text());
    String ask =
        ". '%s'; COMP_WORDS=(%s); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _gable; echo ${COMPREPLY[@]}"
            .formatted(script, begun);

    assertThat(answer(bash, ask)).isEqualTo(whole);
  }

  private static String answer(Path bash, String ask) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(bash.toString(), "--norc", "-c", ask).redirectErrorStream(true).start();
    String answer = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    return answer.strip();
  }
}
