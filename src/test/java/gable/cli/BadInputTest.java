package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A file that cannot be used costs one clear sentence, and nothing else. */
class BadInputTest {

  @TempDir private Path temporary;

  private Call reshape(String input, Path output) {
    return Call.of("reshape", input, "-o", output.toString());
  }

  /** Nothing lies in the folder of the output but what is named. */
  private void assertOnly(Path... expected) throws IOException {
    try (Stream<Path> files = Files.list(temporary)) {
      assertThat(files).containsExactlyInAnyOrder(expected);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "fixtures/broken/missing.3mf | 3 | there is no such file",
        "fixtures/broken | 3 | this is a folder",
        "fixtures/broken/not-a-zip.3mf | 3 | ZIP",
        "fixtures/broken/empty.3mf | 3 | ZIP",
        "fixtures/broken/truncated.3mf | 3 | ZIP",
        "fixtures/broken/no-model-part.3mf | 3 | no model",
        "fixtures/broken/xml-cut-off.3mf | 3 | /3D/3dmodel.model, line ",
        "fixtures/broken/xml-wrong-tag.3mf | 3 | /3D/3dmodel.model, line ",
        "fixtures/broken/index-out-of-range.3mf | 5 | triangle 0",
        "fixtures/broken/coordinate-nan.3mf | 5 | NaN",
        "fixtures/broken/open-mesh.3mf | 5 | object 1",
        "fixtures/broken/inside-out.3mf | 5 | object 1",
        "fixtures/broken/nothing-built.3mf | 5 | build item",
      })
  void aFileThatCannotBeUsedIsRefusedWithAReason(String input, int code, String words)
      throws IOException {
    Call call = reshape(input, temporary.resolve("out.3mf"));

    assertThat(call.code()).isEqualTo(code);
    assertThat(call.err()).startsWith("gable: " + input + ": ").hasLineCount(1);
    assertThat(call.err() + call.text()).contains(words);
    assertThat(call.err() + call.text()).doesNotContain("Exception").doesNotContain("at gable.");
    assertOnly();
  }

  @Test
  void brokenXmlIsPlacedByLineAndColumn() {
    Call call = reshape("fixtures/broken/xml-wrong-tag.3mf", temporary.resolve("out.3mf"));

    assertThat(call.err()).containsPattern("/3D/3dmodel\\.model, line [0-9]+, column [0-9]+: ");
  }

  @Test
  void anOpenMeshIsNamedWithTheNumberOfItsOpenEdges() {
    Call call = reshape("fixtures/broken/open-mesh.3mf", temporary.resolve("out.3mf"));

    // derived: three triangles in a row that share two edges are missing, so 3 + 3 + 3 - 2 * 2 are
    // open
    assertThat(call.err()).contains("object 1 'block' of /3D/3dmodel.model").contains("5 edges");
  }

  @Test
  void aBadObjectDoesNotSpoilTheOthers() {
    Call call = reshape("fixtures/build/two-objects-one-open.3mf", temporary.resolve("out.3mf"));

    assertThat(call.code()).isZero();
    assertThat(call.text()).contains("1 reshaped", "object 2 'leaky'");
  }

  @Test
  void aRefusalStandsInTheJsonToo() {
    Call call = Call.of("inspect", "fixtures/broken/truncated.3mf", "--json", "-", "--quiet");

    assertThat(call.code()).isEqualTo(3);
    assertThat(call.text()).contains("\"result\" : \"rejected\"", "\"code\" : \"zip-");
  }

  @Test
  void anOutputThatIsAFolderIsRefused() throws IOException {
    Path folder = Files.createDirectory(temporary.resolve("folder"));

    Call call = reshape("fixtures/bore/through-d8.3mf", folder);

    assertThat(call.code()).isEqualTo(4);
    assertThat(call.err()).contains("folder").hasLineCount(1);
    assertOnly(folder);
  }

  @Test
  void anOutputInAFolderThatDoesNotExistIsRefused() throws IOException {
    Call call = reshape("fixtures/bore/through-d8.3mf", temporary.resolve("no/out.3mf"));

    assertThat(call.code()).isEqualTo(4);
    assertThat(call.err()).contains("no folder").hasLineCount(1);
    assertOnly();
  }

  @Test
  void anOldOutputSurvivesARefusal() throws IOException {
    Path old = temporary.resolve("out.3mf");
    Files.write(old, List.of("what was there before"));

    Call call = reshape("fixtures/broken/truncated.3mf", old);

    assertThat(call.code()).isEqualTo(3);
    assertThat(old).hasContent("what was there before");
    assertOnly(old);
  }

  /** What goes to the standard output is written as on a full disk: a little, then no more. */
  @ParameterizedTest
  @CsvSource({"reshape, -o, -", "inspect, --json, -", "inspect, --slope, 45"})
  void aStandardOutputThatIsFullIsSaid(String command, String option, String value) {
    OutputStream full =
        new OutputStream() {
          private int room = 100;

          @Override
          public void write(int b) throws IOException {
            if (room-- <= 0) {
              throw new IOException("No space left on device");
            }
          }
        };
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Streams streams = Streams.of(InputStream.nullInputStream(), full, err, StandardCharsets.UTF_8);

    int code =
        Main.run(new String[] {command, "fixtures/bore/through-d8.3mf", option, value}, streams);

    assertThat(code).as(err.toString(StandardCharsets.UTF_8)).isEqualTo(ExitCode.NOT_WRITTEN);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("writ").doesNotContain("Exc");
  }

  @Test
  void aReportThatCannotBeWrittenIsSaid() {
    Call call =
        Call.of(
            "inspect",
            "fixtures/bore/through-d8.3mf",
            "--json",
            temporary.resolve("no/report.json").toString());

    assertThat(call.code()).isEqualTo(4);
    assertThat(call.err()).contains("report.json").hasLineCount(1);
  }
}
