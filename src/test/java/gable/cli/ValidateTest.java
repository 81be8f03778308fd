package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code gable validate} says and how it ends. Codes are decisions of this project. */
class ValidateTest {

  private static final String SOUND = "fixtures/bore/through-d8.3mf";
  private static final String WRONG = "fixtures/broken/no-model-part.3mf";

  @TempDir private Path temporary;

  @Test
  void aSoundFilePassesInOneLine() {
    Call call = Call.of("validate", SOUND);

    assertThat(call.code()).isZero();
    assertThat(call.text()).isEqualTo(SOUND + ": pass\n");
    assertThat(call.err()).isEmpty();
  }

  @Test
  void whatFailsIsShownWithPlaceRuleAndSectionAndEndsWithSix() {
    Call call = Call.of("validate", WRONG);

    assertThat(call.code()).isEqualTo(6);
    assertThat(call.text())
        .contains(WRONG + ": fail\n", "  fail     3mf-no-model at _rels/.rels\n")
        .contains("(3MF Core 2.1.1). To do: ");
  }

  @Test
  void aFileThatIsNotThereIsNotJudgedByTheStandard() {
    Call call = Call.of("validate", "nowhere.3mf");

    assertThat(call.code()).isEqualTo(3);
    assertThat(call.text()).contains("nowhere.3mf: unread\n", "  unread   input-missing");
  }

  @Test
  void textThatIsNoPackageFails() throws IOException {
    Path text = temporary.resolve("a.3mf");
    Files.writeString(text, "solid cube");

    assertThat(Call.of("validate", text.toString()).code()).isEqualTo(6);
  }

  @Test
  void severalFilesEndWithTheHighestCode() {
    Call call = Call.of("validate", SOUND, "nowhere.3mf", WRONG);

    assertThat(call.code()).isEqualTo(6);
    assertThat(call.text().lines().filter(line -> !line.startsWith(" "))).hasSize(3);
  }

  @Test
  void quietShowsOnlyWhatFailsAndOnStandardError() {
    Call sound = Call.of("validate", SOUND, "--quiet");
    Call wrong = Call.of("validate", WRONG, "--quiet");

    assertThat(sound.text() + sound.err() + wrong.text()).isEmpty();
    assertThat(wrong.err()).contains("3mf-no-model");
  }

  @Test
  void jsonOfOneFileIsOneObjectAndLeavesTheTextToStandardError() throws IOException {
    Call call = Call.with(Files.readAllBytes(Path.of(WRONG)), "validate", "-", "--json", "-");
    JsonNode json = new ObjectMapper().readTree(call.out());

    assertThat(call.err()).contains("standard input: fail");
    assertThat(json.path("schema").asText()).isEqualTo("gable-validation/1");
    assertThat(json.path("verdict").asText()).isEqualTo("fail");
    assertThat(json.path("sha256").asText()).hasSize(64);
    JsonNode finding = json.path("findings").path(0);
    List<String> names = new ArrayList<>();
    finding.fieldNames().forEachRemaining(names::add);
    assertThat(names)
        .containsExactly(
            "severity",
            "code",
            "section",
            "part",
            "path",
            "line",
            "column",
            "found",
            "expected",
            "remedy");
    assertThat(finding.path("severity").asText()).isEqualTo("fail");
    assertThat(finding.path("section").asText()).isEqualTo("3MF Core 2.1.1");
  }

  @Test
  void jsonOfSeveralFilesIsOneLineForEach() throws IOException {
    Path json = temporary.resolve("out.json");
    Call.of("validate", SOUND, WRONG, "--json", json.toString());

    List<String> lines = Files.readAllLines(json);
    assertThat(lines).hasSize(2);
    for (String line : lines) {
      assertThat(new ObjectMapper().readTree(line).path("schema").asText())
          .isEqualTo("gable-validation/1");
    }
  }

  @Test
  void aReportNeverGoesOverTheFileThatItIsAbout() throws IOException {
    Path copy = temporary.resolve("a.3mf");
    Files.copy(Path.of(SOUND), copy);
    Call call = Call.of("validate", copy.toString(), "--json", copy.toString());

    assertThat(call.code()).isEqualTo(2);
    assertThat(copy).hasSameBinaryContentAs(Path.of(SOUND));
  }
}
