package gable.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import gable.report.Digest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A run over a folder, in a process of its own, is killed without notice at random moments and
 * started again, until one comes to its end. Then the output folder must be that of a run that was
 * not killed. {@code -Dkills=N} sets the number of kills.
 */
class KilledRunTest {

  private static final Path FIXTURES = Path.of("fixtures");
  private static final int COPIES = 3;

  @TempDir private Path temporary;

  private Process start(Path in, Path out, String... more) throws IOException {
    List<String> call = new ArrayList<>();
    call.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    call.add("-XX:TieredStopAtLevel=1");
    call.addAll(List.of("-cp", System.getProperty("java.class.path"), "gable.cli.Main"));
    call.addAll(List.of("catalogue", in.toString(), out.toString(), "--threads", "2"));
    call.addAll(List.of(more));
    return new ProcessBuilder(call)
        .redirectErrorStream(true)
        .redirectOutput(temporary.resolve("log").toFile())
        .start();
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.toList()) {
        String name = folder.relativize(file).toString();
        contents.put(name, Files.isDirectory(file) ? "folder" : Digest.of(file));
      }
    }
    return contents;
  }

  private Path models() throws IOException {
    Path in = Files.createDirectories(temporary.resolve("in"));
    List<Path> fixtures;
    try (Stream<Path> files = Files.walk(FIXTURES)) {
      fixtures = files.filter(file -> file.toString().endsWith(".3mf")).toList();
    }
    for (int copy = 0; copy < COPIES; copy++) {
      for (Path fixture : fixtures) {
        Path target = in.resolve("" + copy).resolve(FIXTURES.relativize(fixture));
        Files.createDirectories(target.getParent());
        Files.copy(fixture, target);
      }
    }
    return in;
  }

  @Test
  @Tag("slow")
  void aRunThatIsKilledAndStartedAgainEndsAsOneThatIsNot() throws Exception {
    int kills = Integer.getInteger("kills", 5);
    Random random = new Random(6);
    Path in = models();
    Path undisturbed = temporary.resolve("undisturbed");
    long began = System.nanoTime();
    start(in, undisturbed, "--quiet").waitFor();
    long whole = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began);
    Map<String, String> expected = contents(undisturbed);

    int killed = 0;
    for (int round = 0; killed < kills; round++) {
      Path out = temporary.resolve("out" + round);
      boolean ended = false;
      while (!ended) {
        Process process = start(in, out, "--quiet");
        ended =
            killed >= kills
                ? process.waitFor() >= 0
                : process.waitFor(random.nextLong(whole + 1), TimeUnit.MILLISECONDS);
        if (!ended) {
          process.destroyForcibly().waitFor();
          killed++;
        }
      }
      assertThat(contents(out)).as("after %d kills", killed).isEqualTo(expected);
    }
    assertThat(expected).containsKeys("index.html", "0/parts/bracket.3mf");
  }

  @Test
  @Tag("slow")
  void aRunThatIsInterruptedEndsInOrderAndTellsHowToGoOn() throws Exception {
    Path in = models();
    Path out = temporary.resolve("out");
    Process process = start(in, out);
    Path journal = out.resolve("gable-catalogue").resolve("journal.jsonl");
    while (process.isAlive() && (!Files.exists(journal) || Files.size(journal) == 0)) {
      Thread.sleep(20);
    }
    boolean ignored = isInterruptIgnored();
    String signal = ignored ? "-TERM" : "-INT";
    new ProcessBuilder("kill", signal, Long.toString(process.pid())).start().waitFor();
    assertThat(process.waitFor())
        .as("killed by a signal, as shells count it")
        .isEqualTo(128 + (ignored ? 15 : 2));
    assertThat(Files.readString(temporary.resolve("log")))
        .contains("The same call goes on")
        .doesNotContain("Exception");
    assertThat(Files.readString(journal)).as("no torn line").endsWith("}\n");

    start(in, out, "--quiet").waitFor();
    Path undisturbed = temporary.resolve("undisturbed");
    start(in, undisturbed, "--quiet").waitFor();
    assertThat(contents(out)).isEqualTo(contents(undisturbed));
  }

  /**
   * True where whoever started the tests has them ignore the signal of Ctrl-C, as shells do to what
   * they start in the background; children inherit that, and a JVM keeps to it.
   */
  private static boolean isInterruptIgnored() throws IOException {
    Path status = Path.of("/proc/self/status");
    if (!Files.exists(status)) {
      return false;
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("SigIgn:"))
        .anyMatch(line -> (Long.parseUnsignedLong(line.substring(7).strip(), 16) & 2) != 0);
  }
}
