package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Writing while the process is killed or the disk is full. */
class SafeWriteProcessTest {

  @TempDir Path folder;

  @Test
  @Tag("slow")
  void leavesTheOldFileOrACompleteNewOneWhenKilledAtAnyMoment() throws Exception {
    Path target = folder.resolve("target.3mf");
    Files.write(target, new byte[EndlessWriter.LENGTH]);
    SplittableRandom random = new SplittableRandom(7);
    int changed = 0;
    for (int run = 0; run < 200; run++) {
      byte before = checkWhole(target);
      Process process = start(List.of(), target, 1_000_000, run);
      waitUntilItWrites(process);
      process.waitFor(random.nextInt(60), TimeUnit.MILLISECONDS);
      process.destroyForcibly().waitFor();
      changed += checkWhole(target) == before ? 0 : 1;
    }
    assertThat(changed).as("runs that came as far as writing").isGreaterThan(20);
  }

  @Test
  @Tag("slow")
  void leavesNoTemporaryFileWhenEndedInOrder() throws Exception {
    Path target = folder.resolve("target.3mf");
    SplittableRandom random = new SplittableRandom(8);
    for (int run = 0; run < 20; run++) {
      Process process = start(List.of(), target, 1_000_000, run);
      waitUntilItWrites(process);
      process.waitFor(random.nextInt(60), TimeUnit.MILLISECONDS);
      process.destroy();
      process.waitFor();
      assertThat(names()).allMatch("target.3mf"::equals);
    }
  }

  @Test
  @Tag("slow")
  void leavesTheOldFileWhenThereIsNoRoomForTheNewOne() throws Exception {
    Path target = Files.writeString(folder.resolve("target.3mf"), "old");
    // Files may grow to 1,000 blocks of 512 or 1,024 bytes; the new one has 3,000,000.
    Process process = start(List.of("sh", "-c", "ulimit -f 1000; exec \"$@\"", "sh"), target, 1, 0);
    assertThat(process.waitFor()).isEqualTo(4);
    assertThat(target).hasContent("old");
    assertThat(names()).containsExactly("target.3mf");
  }

  private void waitUntilItWrites(Process process) throws Exception {
    String temporary = ".gable-" + process.pid() + "-0.part";
    while (process.isAlive() && !Files.exists(folder.resolve(temporary))) {
      process.waitFor(1, TimeUnit.MILLISECONDS);
    }
  }

  private static byte checkWhole(Path target) throws IOException {
    byte[] bytes = Files.readAllBytes(target);
    assertThat(bytes).hasSize(EndlessWriter.LENGTH);
    for (byte value : bytes) {
      if (value != bytes[0]) {
        throw new AssertionError("the file is a mixture");
      }
    }
    return bytes[0];
  }

  private static Process start(List<String> prefix, Path target, int rounds, int first)
      throws IOException {
    List<String> command = new ArrayList<>(prefix);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:-UsePerfData"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(
        List.of(EndlessWriter.class.getName(), target.toString(), "" + rounds, "" + first));
    return new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(nowhere()).start();
  }

  private static File nowhere() {
    return new File(File.separatorChar == '/' ? "/dev/null" : "NUL");
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}
