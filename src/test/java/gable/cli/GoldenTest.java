package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every fixture goes through {@code reshape}; beside each lies the report that it must give. {@code
 * -Dgolden.update=true} writes the reports; their difference is to be reviewed like code.
 *
 * <p>The reports were made by this program: they show changes, not truths. Truths are checked
 * against other kernels elsewhere.
 */
class GoldenTest {

  private static final Path FOLDER = Path.of("fixtures");

  @TempDir private Path temporary;

  static List<Path> fixtures() throws IOException {
    try (Stream<Path> files = Files.walk(FOLDER)) {
      return files.filter(file -> file.toString().endsWith(".3mf")).sorted().toList();
    }
  }

  @ParameterizedTest
  @MethodSource("fixtures")
  void aFixtureGivesItsReport(Path fixture) throws IOException {
    Path out = temporary.resolve("out.3mf");
    Path report = temporary.resolve("report.json");

    Call call =
        Call.of(
            "reshape",
            fixture.toString(),
            "-o",
            out.toString(),
            "--json",
            report.toString(),
            "--quiet");

    assertThat(call.out()).isEmpty();
    assertThat(Files.exists(out)).as("an output is written").isEqualTo(call.code() == 0);
    compare(Files.readString(report), golden(fixture));
  }

  @ParameterizedTest
  @MethodSource("fixtures")
  void aSecondRunChangesNothing(Path fixture) throws IOException {
    Path once = temporary.resolve("once.3mf");
    Path twice = temporary.resolve("twice.3mf");
    if (Call.of("reshape", fixture.toString(), "-o", once.toString(), "--quiet").code() != 0) {
      return;
    }

    Call again = Call.of("reshape", once.toString(), "-o", twice.toString(), "--quiet");

    assertThat(again.code()).isZero();
    assertThat(twice).hasSameBinaryContentAs(once);
  }

  @Test
  void everyReportBelongsToAFixture() throws IOException {
    Set<String> reports;
    try (Stream<Path> files = Files.walk(FOLDER)) {
      reports =
          files
              .map(Path::toString)
              .filter(name -> name.endsWith(".report.json"))
              .collect(Collectors.toCollection(TreeSet::new));
    }
    Set<String> wanted =
        fixtures().stream()
            .map(fixture -> golden(fixture).toString())
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(reports).isEqualTo(wanted);
  }

  private static Path golden(Path fixture) {
    return Path.of(fixture.toString().replaceFirst("\\.3mf$", ".report.json"));
  }

  private static void compare(String report, Path golden) throws IOException {
    if (Boolean.getBoolean("golden.update")) {
      Files.writeString(golden, report, StandardCharsets.UTF_8);
    }
    assertThat(report).isEqualTo(Files.readString(golden));
  }
}
