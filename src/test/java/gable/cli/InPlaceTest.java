package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that are replaced by their results. Decisions of this project. */
class InPlaceTest {

  private static final Path BLOCK = Path.of("fixtures/bore/through-d8.3mf");
  private static final Path PLAIN = Path.of("fixtures/build/no-bore.3mf");
  private static final Path TORN = Path.of("fixtures/broken/truncated.3mf");
  private static final FileTime OLD = FileTime.fromMillis(1_000_000_000_000L);

  @TempDir private Path temporary;
  private Path block = Path.of("");
  private Path plain = Path.of("");
  private Path torn = Path.of("");

  @BeforeEach
  void copy() throws IOException {
    block = Files.copy(BLOCK, temporary.resolve("block.3mf"));
    plain = Files.copy(PLAIN, temporary.resolve("plain.3mf"));
    torn = Files.copy(TORN, temporary.resolve("torn.3mf"));
    for (Path file : List.of(block, plain, torn)) {
      Files.setLastModifiedTime(file, OLD);
    }
  }

  private Call call(String... more) {
    Stream<String> files = Stream.of(block, plain, torn).map(Path::toString);
    Stream<String> words = Stream.concat(Stream.of("reshape", "--in-place"), Stream.of(more));
    return Call.of(Stream.concat(words, files).toArray(String[]::new));
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(temporary)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void eachFileIsReplacedOrStaysUntouched() throws IOException {
    Call call = call();

    assertThat(call.code()).isEqualTo(3);
    assertThat(Files.mismatch(block, BLOCK)).isNotNegative();
    assertThat(Files.mismatch(plain, PLAIN)).isNegative();
    assertThat(Files.mismatch(torn, TORN)).isNegative();
    assertThat(Files.getLastModifiedTime(plain)).isEqualTo(OLD);
    assertThat(names()).containsExactly("block.3mf", "plain.3mf", "torn.3mf");
  }

  @Test
  void whatWasReplacedIsKeptAndNothingElse() throws IOException {
    call("--backup", ".orig");

    assertThat(names()).containsExactly("block.3mf", "block.3mf.orig", "plain.3mf", "torn.3mf");
    assertThat(Files.mismatch(temporary.resolve("block.3mf.orig"), BLOCK)).isNegative();
  }

  @Test
  void aSecondRunKeepsTheFirstCopy() throws IOException {
    call("--backup", ".orig");
    Call again = call("--backup", ".orig");

    assertThat(again.err()).contains("another file", "another suffix");
    assertThat(again.code()).isEqualTo(4);
    assertThat(Files.mismatch(temporary.resolve("block.3mf.orig"), BLOCK)).isNegative();
  }

  @Test
  void aCopyThatAKilledRunLeftIsTakenForTheCopy() throws IOException {
    Files.copy(BLOCK, temporary.resolve("block.3mf.orig"));

    assertThat(call("--backup", ".orig").err()).doesNotContain("another file");
    assertThat(Files.mismatch(block, BLOCK)).isNotNegative();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "reshape X --in-place -o Y",
        "reshape --in-place -",
        "reshape X --backup .orig -o Y",
        "reshape X --in-place --backup ../orig",
        "reshape X Y --in-place --report R",
        "reshape X Y -o Z",
        "reshape X"
      })
  void whatCannotBeMeantIsRefused(String words) {
    Call call = Call.of(words.split(" ", -1));

    assertThat(call.code()).isEqualTo(2);
    assertThat(call.err()).startsWith("gable: ").hasLineCount(1);
  }
}
