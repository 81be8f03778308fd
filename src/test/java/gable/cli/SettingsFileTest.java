package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Settings in a file. Decisions of this project. */
class SettingsFileTest {

  private static final String BLOCK = "fixtures/bore/through-d8.3mf";

  @TempDir private Path temporary;

  private Call call(String file, String... more) throws IOException {
    Path settings = temporary.resolve("gable.txt");
    Files.writeString(settings, file);
    String[] args = new String[6 + more.length];
    String[] start = {"inspect", BLOCK, "--settings", settings.toString(), "--json", "-"};
    System.arraycopy(start, 0, args, 0, 6);
    System.arraycopy(more, 0, args, 6, more.length);
    return Call.of(args);
  }

  @Test
  void namesAreThoseOfTheOptions() throws IOException {
    Call call = call("\uFEFF# mine\nslope = 50 # steeper\n\nskip=B7, B8\njoin-vertices = yes\n");

    assertThat(call.text())
        .contains("\"slopeDeg\" : 50,", "\"B7\", \"B8\"", "\"joinVertices\" : true");
  }

  @Test
  void theCallComesBeforeTheFile() throws IOException {
    assertThat(call("slope = 50\n", "--slope", "55").text()).contains("\"slopeDeg\" : 55,");
  }

  @Test
  void whatStandsUnderAHeadingCountsOnlyByItsName() throws IOException {
    String file =
        """
        slope = 50
        join-vertices = yes
        [petg]
        slope = 52
        least-roof = 2
        [old machine]
        slope = 60
        join-vertices = no
        """;

    assertThat(call(file).text()).contains("\"slopeDeg\" : 50,", "\"leastRoofMm\" : 1.2");
    assertThat(call(file, "--use", "petg").text())
        .contains("\"slopeDeg\" : 52,", "\"leastRoofMm\" : 2,", "\"joinVertices\" : true");
    assertThat(call(file, "--use", "petg,old machine").text())
        .contains("\"slopeDeg\" : 60,", "\"leastRoofMm\" : 2,", "\"joinVertices\" : false");
  }

  @Test
  void sizesOfJointsAreSettingsLikeAnyOther() throws IOException {
    assertThat(call("slope = 45\n").text())
        .contains("\"tipMm\" : null,", "\"leadInMm\" : 0.4,", "\"webWidthMm\" : 0.8,")
        .contains("\"clearanceMm\" : 0.2,", "\"gusset\" : \"below\",");
    String all = "tip = 0.7\nlead-in = 0.5\nweb-width = 1.2\nclearance = 0.15\ngusset = both\n";
    assertThat(call(all).text())
        .contains("\"tipMm\" : 0.7,", "\"leadInMm\" : 0.5,", "\"webWidthMm\" : 1.2,")
        .contains("\"clearanceMm\" : 0.15,", "\"gusset\" : \"both\",");
  }

  @Test
  void whatIsForOtherCommandsDoesNoHarm() throws IOException {
    assertThat(call("threads = 2\nfail-on = left\nbackup = .orig\n").code()).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "slope 50             | line 1: expected a line such as",
        "\\nslop = 50         | line 2: there is no setting 'slop'; there are:",
        "output = x           | line 1: there is no setting 'output'",
        "in-place = yes       | line 1: there is no setting 'in-place'",
        "slope =              | line 1: slope needs a value",
        "join-vertices = maybe| line 1: join-vertices is yes or no",
        "slope = 1\\nslope = 2| line 2: slope is there twice",
        "[a]\\n[a]            | line 2: the heading [a] is there twice",
        "slope = steep        | line 1)",
        "layer = 0.2          | --layer needs --line"
      })
  void aFaultIsNamedWithItsLine(String file, String words) throws IOException {
    Call call = call(file.replace("\\n", "\n"));

    assertThat(call.code()).isEqualTo(2);
    assertThat(call.err()).contains(words).hasLineCount(1);
  }

  @Test
  void headingsThatAreMissingAreNamed() throws IOException {
    assertThat(call("[petg]\n[asa]\n", "--use", "pla").err())
        .contains("no heading [pla]; it has: asa, petg");
    assertThat(Call.of("inspect", BLOCK, "--use", "x").err()).contains("--use needs --settings");
    assertThat(Call.of("inspect", BLOCK, "--settings", "nowhere").err()).contains("cannot be read");
  }
}
