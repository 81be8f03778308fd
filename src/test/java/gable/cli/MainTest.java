package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What can be asked for, and what is no call. Exit codes and words are decisions of this project.
 */
class MainTest {

  private static final String BLOCK = "fixtures/bore/through-d8.3mf";
  private static final String PLAIN = "fixtures/build/no-bore.3mf";

  @TempDir private Path temporary;

  private String out() {
    return temporary.resolve("out.3mf").toString();
  }

  @Test
  void helpShowsTheCommandsAndExamplesOnStandardOutput() {
    Call call = Call.of("--help");

    assertThat(call.code()).isZero();
    assertThat(call.err()).isEmpty();
    assertThat(call.text())
        .contains("gable inspect bracket.3mf", "gable reshape bracket.3mf -o", "Exit codes:");
  }

  @Test
  void helpOfACommandNamesEveryOptionWithItsUnit() {
    assertThat(Call.of("reshape", "--help").text())
        .contains("gable reshape FILE -o OUT", "--slope=DEG", "--smallest-bore=MM", "--up=X,Y,Z");
  }

  @Test
  void theVersionIsThatOfTheBuild() {
    assertThat(Call.of("--version").text()).matches("gable [0-9]+\\.[0-9]+\\.[0-9]+\\R");
  }

  @Test
  void reshapersAreListedWithWhatTheyDo() {
    String text = Call.of("reshapers").text();

    assertThat(text).containsPattern("(?m)^roof +gives horizontal bores");
    assertThat(text).containsPattern("(?m)^ +--least-roof=MM +Least material over a roof");
    assertThat(text).containsPattern("(?m)^ +--tip=MM +Leg of the chamfer of a pin's tip");
    assertThat(text).containsPattern("(?m)^ +--lead-in=MM +Leg of the chamfer of a bore's mouth");
  }

  @Test
  void cautionsAreShownInFull() {
    assertThat(Call.of("cautions").text()).contains("notch", "qualified engineer", "test piece");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "bogus",
        "inspect",
        "inspect --bogus X",
        "reshape X",
        "reshape X -o",
        "reshape X Y -o Z",
        "reshape X -o Y -o Z",
        "inspect X --slope 50 --slope 60",
        "inspect X --slo 50",
        "--bogus",
        "reshapers X",
        "inspect X --slope steep",
        "inspect X --slope 90",
        "inspect X --slope NaN",
        "inspect X --smallest-bore -1",
        "inspect X --smallest-bore 5 --largest-bore 4",
        "inspect X --least-roof 1e999",
        "inspect X --up 0,0",
        "inspect X --up 0,0,0",
        "inspect X --up a,b,c",
        "inspect X --layer 0.2",
        "inspect X --layer 0 --line 0.4",
        "inspect X --line 0",
        "inspect X --line 2.6",
        "inspect X --tip 0",
        "inspect X --tip -1",
        "inspect X --tip NaN",
        "inspect X --tip 5.1",
        "inspect X --lead-in 0",
        "inspect X --lead-in 3.1",
        "inspect X --web-width 0",
        "inspect X --web-width 5.1",
        "inspect X --clearance 0",
        "inspect X --clearance -0.2",
        "inspect X --clearance 1.1",
        "inspect X --gusset above",
        "inspect X --with nobody",
        "inspect X --without nobody",
        "inspect X --mixed-orientation turn",
        "inspect X --unknown-parts burn",
        "inspect X --json X",
        "reshape X -o Y --json ./Y",
        "reshape X -o - --json -"
      })
  void aWrongCallSaysWhatIsWrongInOneLineAndReadsNothing(String words) {
    String[] args = words.isEmpty() ? new String[0] : words.split(" ", -1);

    Call call = Call.of(args);

    assertThat(call.code()).isEqualTo(2);
    assertThat(call.out()).isEmpty();
    assertThat(call.err()).startsWith("gable: ").hasLineCount(1);
  }

  @Test
  void anInspectionSaysWhatWouldBeDone() {
    Call call = Call.of("inspect", BLOCK);

    assertThat(call.code()).isZero();
    assertThat(call.err()).isEmpty();
    assertThat(call.text())
        .contains("B1  bore 8.00 mm, through, 20.00 mm", "peaked roof", "1 would be reshaped")
        .contains("45 degrees from the horizontal, 45 from the vertical");
  }

  /** Two lines, or three where two are thinner than 0.8 mm (common practice, no source). */
  @ParameterizedTest
  @CsvSource({"0.25, 0.75", "0.35, 1.05", "0.4, 0.8", "0.45, 0.9", "0.6, 1.2"})
  void aWebIsMadeOfWholeLines(String line, String web) {
    String text = Call.of("inspect", BLOCK, "--line", line, "--json", "-", "--quiet").text();

    assertThat(text).contains("\"webWidthMm\" : " + web + ",");
  }

  @Test
  void inspectionAndReshapingSpeakOfTheSameFeatureByTheSameId() throws IOException {
    String planned = Call.of("inspect", BLOCK, "--json", "-", "--quiet").text();
    String done = Call.of("reshape", BLOCK, "-o", out(), "--json", "-", "--quiet").text();

    assertThat(planned).contains("\"id\" : \"B1\"", "\"outcome\" : \"planned\"");
    assertThat(done)
        .isEqualTo(
            planned
                .replace("\"inspect\"", "\"reshape\"")
                .replace("\"outcome\" : \"planned\"", "\"outcome\" : \"reshaped\""));
  }

  @Test
  void severalFilesGiveOneObjectALineInTheirOrder() {
    Call call = Call.of("inspect", BLOCK, PLAIN, "--json", "-", "--quiet");

    String[] lines = call.text().split("\n", -1);
    assertThat(lines).hasSize(3);
    assertThat(lines[0]).contains("through-d8").startsWith("{").endsWith("}");
    assertThat(lines[1]).contains("no-bore").startsWith("{").endsWith("}");
  }

  @Test
  void theHighestCodeOfSeveralFilesCounts() {
    Call call = Call.of("inspect", BLOCK, "fixtures/broken/truncated.3mf", PLAIN, "--quiet");

    assertThat(call.code()).isEqualTo(3);
  }

  @Test
  void whereNothingIsToBeChangedTheOutputEqualsTheInput() {
    Call call = Call.of("reshape", PLAIN, "-o", out());

    assertThat(call.code()).isZero();
    assertThat(Path.of(out())).hasSameBinaryContentAs(Path.of(PLAIN));
    assertThat(call.text()).contains("nothing changed").doesNotContain("Before you print");
  }

  @Test
  void aChangeIsFollowedByCautions() {
    assertThat(Call.of("reshape", BLOCK, "-o", out()).text()).contains("Before you print");
  }

  @Test
  void quietShowsNothing() {
    Call call = Call.of("reshape", BLOCK, "-o", out(), "--quiet");

    assertThat(call.out()).isEmpty();
    assertThat(call.err()).isEmpty();
  }

  @Test
  void standardStreamsCarryModels() throws IOException {
    byte[] block = Files.readAllBytes(Path.of(BLOCK));

    Call piped = Call.with(block, "reshape", "-", "-o", "-");
    Call.of("reshape", BLOCK, "-o", out());

    assertThat(piped.code()).isZero();
    assertThat(piped.out()).isEqualTo(Files.readAllBytes(Path.of(out())));
    assertThat(piped.err()).contains("standard input", "1 reshaped");
  }

  @Test
  void theInputIsReplacedWhenItIsNamedAsOutput() throws IOException {
    Path file = Files.copy(Path.of(BLOCK), temporary.resolve("own.3mf"));
    Call.of("reshape", BLOCK, "-o", out());

    Call call = Call.of("reshape", file.toString(), "-o", file.toString());

    assertThat(call.code()).isZero();
    assertThat(file).hasSameBinaryContentAs(Path.of(out()));
  }

  @Test
  void aLinkToTheInputIsNoOutput() throws IOException {
    Path file = Files.copy(Path.of(BLOCK), temporary.resolve("own.3mf"));
    Path link = Files.createSymbolicLink(temporary.resolve("link.3mf"), file);

    Call call = Call.of("reshape", file.toString(), "-o", link.toString());

    assertThat(call.code()).isEqualTo(4);
    assertThat(call.err()).contains("another name");
    assertThat(file).hasSameBinaryContentAs(Path.of(BLOCK));
  }

  @Test
  void onlyAndSkipChooseAmongFeatures() {
    Call skipped = Call.of("inspect", BLOCK, "--skip", "B1");
    Call stray = Call.of("inspect", BLOCK, "--only", "B7");
    Call several = Call.of("inspect", BLOCK, "--only", "B7,B1", "--skip", "B2", "--skip", "B3");

    assertThat(skipped.text()).contains("left out by the choice");
    assertThat(stray.text()).contains("left out by the choice", "no feature has the id 'B7'");
    assertThat(several.text()).contains("1 would be reshaped", "id 'B2'", "id 'B3'", "id 'B7'");
  }

  @Test
  void withoutAReshaperNothingIsDone() {
    assertThat(Call.of("inspect", BLOCK, "--without", "roof").text()).contains("nothing to change");
  }

  @Test
  void flatLayersRaiseTheSlopeLimit() {
    // derived: atan(0.3 / (0.5 * 0.4)) = 56.3 degrees
    Call call = Call.of("inspect", BLOCK, "--layer", "0.3", "--line", "0.4");

    assertThat(call.text()).contains("raised to 56.3 degrees", "33.7 from the vertical");
  }

  @Test
  void fineLayersLeaveTheSlopeLimit() {
    assertThat(Call.of("inspect", BLOCK, "--layer", "0.1", "--line", "0.4").text())
        .doesNotContain("raised")
        .contains("45 degrees from the horizontal");
  }

  @Test
  void theDirectionUpDecidesWhatLiesDown() {
    Call call = Call.of("inspect", "fixtures/bore/upright-d8.3mf", "--up", "0,1,0");

    assertThat(call.text()).contains("1 would be reshaped");
  }
}
