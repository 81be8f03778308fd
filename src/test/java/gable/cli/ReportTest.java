package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gable.report.Digest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Reports for people, and folders, by the command. Decisions of this project. */
class ReportTest {

  private static final String BLOCK = "fixtures/bore/through-d8.3mf";

  @TempDir private Path temporary;

  private String at(String name) {
    return temporary.resolve(name).toString();
  }

  @Test
  void aPreviewWritesTheReportAndNothingElse() throws IOException {
    Call call = Call.of("preview", BLOCK, "-o", at("report.html"), "--quiet");

    assertThat(call.code()).isZero();
    assertThat(Files.readString(Path.of(at("report.html")))).contains("1 of 1 feature would get");
    try (Stream<Path> files = Files.list(temporary)) {
      assertThat(files).hasSize(1);
    }
  }

  @Test
  void aReshapingTellsTheHashesOfBothFiles() throws IOException {
    Call call =
        Call.of("reshape", BLOCK, "-o", at("out.3mf"), "--report", at("report.html"), "--quiet");

    assertThat(call.code()).isZero();
    assertThat(Files.readString(Path.of(at("report.html"))))
        .contains(Digest.of(Path.of(BLOCK)), Digest.of(Path.of(at("out.3mf"))), "got a shape");
  }

  @ParameterizedTest
  @ValueSource(strings = {"html", "markdown", "text"})
  void aReportComesInAnyFormatAlsoOnStandardOutput(String format) {
    Call call = Call.of("preview", BLOCK, "-o", "-", "--format", format, "--quiet");

    assertThat(call.code()).isZero();
    assertThat(call.text()).contains("peaked roof", "qualified engineer");
    assertThat(call.text().startsWith("<!DOCTYPE html>")).isEqualTo(format.equals("html"));
  }

  @Test
  void aFileThatCannotBeReadHasAReportToo() {
    Call call = Call.of("preview", "fixtures/broken/truncated.3mf", "-o", at("r.html"), "--quiet");

    assertThat(call.code()).isEqualTo(3);
    assertThat(Path.of(at("r.html"))).exists();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "preview X",
        "preview X -o X",
        "preview X -o R --format docx",
        "reshape X -o Y --report Y",
        "reshape X -o Y --report R --json ./R",
        "reshape X -o - --report -",
        "catalogue X",
        "catalogue X Y Z",
        "catalogue X Y --threads 0",
        "catalogue X Y --time-limit soon",
        "catalogue X Y --fail-on everything"
      })
  void aWrongCallIsRefused(String words) {
    Call call = Call.of(words.split(" ", -1));

    assertThat(call.code()).isEqualTo(2);
    assertThat(call.err()).startsWith("gable: ").hasLineCount(1);
  }

  @Test
  void aCatalogueEndsWithTheGateCodeWhenTheGateIsNotMet() throws IOException {
    Path in = Files.createDirectories(temporary.resolve("in"));
    Files.copy(Path.of("fixtures/bore/no-roof-d16.3mf"), in.resolve("a.3mf"));

    List<String> call = List.of("catalogue", in.toString(), at("out"), "--quiet");

    assertThat(Call.of(call.toArray(String[]::new)).code()).isZero();
    assertThat(Call.of(with(call, "--fail-on", "left")).code()).isEqualTo(6);
    assertThat(Call.of(with(call, "--fail-on", "rejected,notice")).code()).isZero();
  }

  private static String[] with(List<String> call, String... more) {
    return Stream.concat(call.stream(), Stream.of(more)).toArray(String[]::new);
  }

  @Test
  void aCatalogueSaysInShortHowItWent() throws IOException {
    Path in = Files.createDirectories(temporary.resolve("in"));
    Files.copy(Path.of(BLOCK), in.resolve("a.3mf"));
    Files.copy(Path.of("fixtures/broken/truncated.3mf"), in.resolve("b.3mf"));

    Call call = Call.of("catalogue", in.toString(), at("out"));

    assertThat(call.code()).isEqualTo(3);
    assertThat(call.text()).contains("2 models: 1 changed, 0 as they were, 1 rejected");
  }

  @Test
  void aCatalogueOfNothingIsAFaultOfTheInput() {
    Call call = Call.of("catalogue", at("nowhere"), at("out"));

    assertThat(call.code()).isEqualTo(3);
    assertThat(call.err()).contains("is not a folder");
  }
}
