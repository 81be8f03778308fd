package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gable.report.Digest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same results wherever the program runs: in a language whose small i has no dot, in one with
 * digits and numbers of its own, in time zones with odd offsets, without a place for temporary
 * files, and from another folder. Decision of this project.
 */
class AnyPlaceTest {

  private static final Path BRACKET = Path.of("fixtures/parts/bracket.3mf").toAbsolutePath();
  private static final List<List<String>> PLACES =
      List.of(
          List.of(),
          List.of("-Duser.language=tr", "-Duser.country=TR", "-Duser.timezone=Pacific/Chatham"),
          List.of(
              "-Duser.language=ar",
              "-Duser.country=EG",
              "-Duser.timezone=Asia/Kathmandu",
              "-Djava.io.tmpdir=/nowhere"),
          List.of(
              "-Duser.language=th",
              "-Duser.country=TH",
              "-Duser.variant=TH",
              "-Duser.timezone=GMT-12:00",
              "-Dfile.encoding=ISO-8859-1"));

  @TempDir private Path temporary;

  /** What the calls leave in a folder, by names of files. */
  private Map<String, String> results(int number) throws IOException, InterruptedException {
    Path folder = Files.createDirectories(temporary.resolve("place" + number));
    Path models = Files.createDirectories(temporary.resolve("models"));
    Files.write(models.resolve("bracket.3mf"), Files.readAllBytes(BRACKET));
    Files.write(folder.resolve("in.3mf"), Files.readAllBytes(BRACKET));
    run(
        PLACES.get(number),
        folder,
        "reshape in.3mf -o out.3mf --with lead-in --json out.json --report out.html",
        "preview in.3mf -o out.txt --format text",
        "compare in.3mf out.3mf -o differs.html",
        "catalogue ../models catalogue --reports");
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        contents.put(folder.relativize(file).toString(), Digest.of(file));
      }
    }
    return contents;
  }

  private static void run(List<String> place, Path folder, String... calls)
      throws IOException, InterruptedException {
    for (String call : calls) {
      List<String> words = new ArrayList<>();
      words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
      words.addAll(place);
      words.addAll(List.of("-XX:TieredStopAtLevel=1", "-cp", whole(), "gable.cli.Main"));
      words.addAll(List.of(call.split(" ", -1)));
      Path log = folder.resolveSibling("log");
      Process process =
          new ProcessBuilder(words)
              .directory(folder.toFile())
              .redirectErrorStream(true)
              .redirectOutput(log.toFile())
              .start();
      assertThat(process.waitFor()).as(place + " " + call + Files.readString(log)).isZero();
    }
  }

  /** The class path, which may have relative entries, for another folder. */
  private static String whole() {
    List<String> entries = new ArrayList<>();
    for (String entry :
        System.getProperty("java.class.path").split(java.io.File.pathSeparator, -1)) {
      entries.add(Path.of(entry).toAbsolutePath().toString());
    }
    return String.join(java.io.File.pathSeparator, entries);
  }

  @Test
  void everyPlaceGivesTheSameFilesByteForByte() throws Exception {
    Map<String, String> here = results(0);

    assertThat(here).containsKeys("out.3mf", "out.json", "out.html", "catalogue/index.html");
    for (int number = 1; number < PLACES.size(); number++) {
      assertThat(results(number)).as(PLACES.get(number).toString()).isEqualTo(here);
    }
  }

  @Test
  void nothingIsWrittenWhereTheClassesAre() throws Exception {
    Path classes = Path.of("target/classes").toAbsolutePath();
    List<Path> before;
    try (Stream<Path> files = Files.walk(classes)) {
      before = files.sorted().toList();
    }
    results(0);

    try (Stream<Path> files = Files.walk(classes)) {
      assertThat(files.sorted()).isEqualTo(before);
    }
  }
}
