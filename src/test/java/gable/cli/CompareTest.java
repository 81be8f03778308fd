package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gable.report.Digest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Comparisons of two files. Decisions of this project. */
class CompareTest {

  private static final String BRACKET = "fixtures/parts/bracket.3mf";
  private static final String BLOCK = "fixtures/bore/through-d8.3mf";
  private static final String PLAIN = "fixtures/build/no-bore.3mf";

  @TempDir private Path temporary;

  private String at(String name) {
    return temporary.resolve(name).toString();
  }

  private static String text(String before, String after) {
    Call call = Call.of("compare", before, after, "-o", "-", "--format", "text", "--quiet");
    assertThat(call.code()).as(call.err()).isZero();
    return call.text();
  }

  @Test
  void aFileIsEqualToItself() {
    assertThat(text(BRACKET, BRACKET))
        .contains("The files are equal, byte for byte.", "7 are the same in both")
        .doesNotContain("changed:", "only before:", "only after:");
  }

  @Test
  void roofsAreFoundByThePlacesOfTheirBores() {
    Call.of("reshape", BRACKET, "-o", at("roofed.3mf"), "--quiet");
    String text = text(BRACKET, at("roofed.3mf"));

    // source of the numbers: fixtures/parts/bracket.report.json
    assertThat(text)
        .contains("3 of 7 features", "1 of 1 object", "changed: B", "after: roofed bore")
        .contains("4 others are the same in both")
        .doesNotContain("only before:", "only after:");
  }

  @Test
  void whatIsInOneFileOnlyIsSaid() {
    assertThat(text(BLOCK, PLAIN)).contains("only before: B1", "before: bore 8.00 mm");
    assertThat(text(PLAIN, BLOCK)).contains("only after: B1", "after: bore 8.00 mm");
  }

  @Test
  void thePageTellsTheHashesOfBothAndNeedsNothingElse() throws IOException {
    Call.of("reshape", BLOCK, "-o", at("roofed.3mf"), "--quiet");
    Call call = Call.of("compare", BLOCK, at("roofed.3mf"), "-o", at("report.html"));

    assertThat(call.code()).isZero();
    assertThat(call.text()).contains("1 of 1 feature");
    assertThat(Files.readString(Path.of(at("report.html"))))
        .startsWith("<!DOCTYPE html>")
        .contains(Digest.of(Path.of(BLOCK)), Digest.of(Path.of(at("roofed.3mf"))))
        .contains("<svg class=\"section\"", "class=\"fresh\"", "id=\"scene\"")
        .doesNotContain("src=\"http", "href=\"http");
  }

  @ParameterizedTest
  @ValueSource(strings = {"html", "markdown", "text"})
  void anObjectThatIsNotThereBeforeIsNoFault(String format) {
    Call call =
        Call.of("compare", "fixtures/broken/open-mesh.3mf", BLOCK, "-o", "-", "--format", format);

    assertThat(call.code()).isZero();
    assertThat(call.text()).contains("only after");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "compare X",
        "compare X Y",
        "compare - Y -o R",
        "compare X Y -o X",
        "compare X Y Z -o R",
        "compare X Y -o R --format docx"
      })
  void whatCannotBeMeantIsRefused(String words) {
    assertThat(Call.of(words.split(" ", -1)).code()).isEqualTo(2);
  }

  @Test
  void aFileThatCannotBeReadIsNamedWithItsFault() {
    Call call = Call.of("compare", "fixtures/broken/truncated.3mf", BLOCK, "-o", at("r.html"));

    assertThat(call.code()).isEqualTo(3);
    assertThat(call.err()).contains("truncated.3mf");
    assertThat(Path.of(at("r.html"))).doesNotExist();
  }
}
