package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SafeWriteTest {

  @TempDir Path folder;

  @Test
  void putsAFileInPlaceThatWasNotThere() throws Exception {
    Path target = folder.resolve("new.3mf");
    write(target, "new");
    assertThat(target).hasContent("new");
    assertThat(names()).containsExactly("new.3mf");
  }

  @Test
  void leavesTheOldFileUntilTheNewOneIsCommitted() throws Exception {
    Path target = old();
    try (SafeWrite output = SafeWrite.to(target)) {
      output.stream().write(new byte[100_000]);
      assertThat(target).hasContent("old");
      output.seal();
      assertThat(output.temporary()).hasSize(100_000);
      assertThat(target).hasContent("old");
      output.commit();
      assertThat(target).hasSize(100_000);
    }
    assertThat(names()).containsExactly("old.3mf");
  }

  @Test
  void leavesNothingBehindWhenWritingIsGivenUp() throws Exception {
    Path target = old();
    try (SafeWrite output = SafeWrite.to(target)) {
      output.stream().write(1);
    }
    assertThat(target).hasContent("old");
    assertThat(names()).containsExactly("old.3mf");
  }

  @Test
  void replacesTheFileThatItIsReading() throws Exception {
    Path target = folder.resolve("model.3mf");
    Files.write(target, ZipBytes.minimal().bytes());
    byte[] model = "<model/>".getBytes(StandardCharsets.UTF_8);
    PackageEdit edit = PackageEdit.NONE.replace("/3D/3dmodel.model", PartContent.of(model));
    try (OpcPackage source = OpcPackage.open(target, OpcLimits.DEFAULT);
        SafeWrite output = SafeWrite.to(target)) {
      PackageWriter.write(source, edit, Compression.serial(6), output.stream());
      output.commit();
      assertThat(source.read("/3D/3dmodel.model")).asString().isEqualTo(Packages.MODEL);
    }
    try (OpcPackage written = OpcPackage.open(target, OpcLimits.DEFAULT)) {
      assertThat(written.read("/3D/3dmodel.model")).isEqualTo(model);
    }
  }

  @Test
  void writesThroughALinkAndKeepsIt() throws Exception {
    Path target = old();
    Path inner = Files.createSymbolicLink(folder.resolve("inner.3mf"), Path.of("old.3mf"));
    Path link = Files.createSymbolicLink(folder.resolve("link.3mf"), inner);
    write(link, "new");
    assertThat(link).isSymbolicLink();
    assertThat(inner).isSymbolicLink();
    assertThat(Files.isSymbolicLink(target)).isFalse();
    assertThat(target).hasContent("new");
  }

  @Test
  void makesTheFileThatALinkPromises() throws Exception {
    Path link = Files.createSymbolicLink(folder.resolve("link.3mf"), Path.of("later.3mf"));
    write(link, "new");
    assertThat(folder.resolve("later.3mf")).hasContent("new");
    assertThat(link).isSymbolicLink();
  }

  @Test
  void keepsThePermissionsOfTheFileThatItReplaces() throws Exception {
    Path target = old();
    Files.setPosixFilePermissions(target, PosixFilePermissions.fromString("rw-r-----"));
    write(target, "new");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(target)))
        .isEqualTo("rw-r-----");
  }

  @Test
  void writesTwoFilesOfOneNameAtOnceWithoutMixingThem() throws Exception {
    Path target = old();
    try (SafeWrite first = SafeWrite.to(target);
        SafeWrite second = SafeWrite.to(target)) {
      first.stream().write('1');
      second.stream().write('2');
      first.commit();
      assertThat(target).hasContent("1");
      second.commit();
      assertThat(target).hasContent("2");
    }
    assertThat(names()).containsExactly("old.3mf");
  }

  @Test
  void removesWhatAKilledProgramLeftAnHourAgoAndNothingElse() throws Exception {
    long gone = Long.MAX_VALUE / 10; // no machine has that many processes
    leftover(Litter.name(gone, 0), 61);
    leftover(Litter.name(gone, 1), 59); // too young
    leftover(Litter.name(ProcessHandle.current().pid(), 77), 61); // its program lives
    leftover(".gable-notes.part", 61);
    leftover("model.3mf.part", 61);

    write(folder.resolve("new.3mf"), "new");

    assertThat(names())
        .containsExactlyInAnyOrder(
            Litter.name(gone, 1),
            Litter.name(ProcessHandle.current().pid(), 77),
            ".gable-notes.part",
            "model.3mf.part",
            "new.3mf");
  }

  private void leftover(String name, int minutes) throws IOException {
    Path file = Files.writeString(folder.resolve(name), "half");
    Instant then = Instant.now().minus(Duration.ofMinutes(minutes));
    Files.setLastModifiedTime(file, FileTime.from(then));
  }

  @Test
  void refusesWhatIsNoPlaceForAFile() throws Exception {
    checkRefused(folder, "output-is-a-folder");
    checkRefused(folder.resolve("no/such/folder.3mf"), "output-folder-missing");
    checkRefused(old().resolve("below-a-file.3mf"), "output-folder-missing");
    checkRefused(Path.of("/dev/null"), "output-not-a-file");
    Path loop = folder.resolve("loop.3mf");
    Files.createSymbolicLink(loop, loop.getFileName());
    checkRefused(loop, "output-link-loop");
    assertThat(names()).containsExactlyInAnyOrder("loop.3mf", "old.3mf");
  }

  @Test
  void writesToANameAsLongAsNamesCanBe() throws Exception {
    Path target = folder.resolve("n".repeat(251) + ".3mf"); // 255 bytes (practice: ext4, APFS)
    write(target, "new");
    assertThat(target).hasContent("new");
  }

  @Test
  void saysSoWhenTheFileCannotBeMovedIntoPlaceAndCleansUp() throws Exception {
    SafeWrite output = SafeWrite.to(folder.resolve("n".repeat(300) + ".3mf"));
    output.stream().write(1);
    assertThatThrownBy(output::commit)
        .isInstanceOfSatisfying(
            WriteException.class,
            e -> assertThat(e.problem().code()).isEqualTo("output-cannot-be-written"));
    output.close();
    assertThat(names()).isEmpty();
  }

  @Test
  void refusesWhatMayNotBeWritten() throws Exception {
    Path target = old();
    Files.setPosixFilePermissions(target, PosixFilePermissions.fromString("r--r--r--"));
    assumeFalse(Files.isWritable(target), "whoever may do everything cannot be refused");
    checkRefused(target, "output-write-protected");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("r-xr-xr-x"));
    checkRefused(folder.resolve("new.3mf"), "output-cannot-be-written");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    assertThat(target).hasContent("old");
  }

  private static void checkRefused(Path target, String code) {
    assertThatThrownBy(() -> SafeWrite.to(target).close())
        .isInstanceOfSatisfying(
            WriteException.class,
            e -> {
              assertThat(e.problem().code()).isEqualTo(code);
              assertThat(e.problem().sentence()).contains("; expected ", "To do: ");
            });
  }

  private Path old() throws IOException {
    return Files.writeString(folder.resolve("old.3mf"), "old");
  }

  private static void write(Path target, String text) throws Exception {
    try (SafeWrite output = SafeWrite.to(target)) {
      output.stream().write(text.getBytes(StandardCharsets.UTF_8));
      output.commit();
    }
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}
