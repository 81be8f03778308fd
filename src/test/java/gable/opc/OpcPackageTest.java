package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OpcPackageTest {

  private static final String MODEL = "/3D/3dmodel.model";

  @TempDir Path folder;

  @Test
  void findsPartsByAnySpellingOfTheirName() throws Exception {
    ZipBytes zip = ZipBytes.minimal();
    zip.add("3D/tex 1.png", "picture");
    try (OpcPackage opened = open(zip)) {
      assertThat(opened.part("/3d/TEX%201.png").orElseThrow().name()).isEqualTo("/3D/tex 1.png");
      assertThat(opened.part("3D/3dmodel.model")).isEmpty();
      assertThat(opened.parts()).extracting(Part::name).containsExactly(MODEL, "/3D/tex 1.png");
      assertThat(opened.rootModelPart())
          .isEqualTo(new Part(MODEL, Part.MODEL_TYPE, Packages.MODEL.length()));
      assertThatThrownBy(() -> opened.read("/nothing"))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("/nothing");
    }
  }

  @Test
  void readsAPartLargerThanItsFirstGuess() throws Exception {
    byte[] large = new byte[5_000_000];
    for (int i = 0; i < large.length; i++) {
      large[i] = (byte) (i * 31 >> 7);
    }
    ZipBytes zip = ZipBytes.minimal();
    zip.add("3D/large.model", large);
    zip.add("3D/stored.model", large).stored();
    zip.add("3D/empty.model", "");
    try (OpcPackage opened = open(zip)) {
      assertThat(opened.read("/3D/large.model")).isEqualTo(large);
      assertThat(opened.read("/3D/stored.model")).isEqualTo(large);
      assertThat(opened.read("/3D/empty.model")).isEmpty();
      try (InputStream stream = opened.stream("/3D/large.model")) {
        assertThat(stream.readAllBytes()).isEqualTo(large);
        assertThat(stream.read()).isEqualTo(-1);
      }
    }
  }

  @Test
  void isReadBySeveralThreadsAtOnce() throws Exception {
    byte[] bytes = "0123456789".repeat(100_000).getBytes(StandardCharsets.UTF_8);
    ZipBytes zip = ZipBytes.minimal();
    zip.add("3D/large.model", bytes);
    ExecutorService threads = Executors.newFixedThreadPool(4);
    try (OpcPackage opened = open(zip)) {
      List<Future<byte[]>> reads = new ArrayList<>();
      for (int i = 0; i < 8; i++) {
        reads.add(threads.submit(() -> opened.read("/3D/large.model")));
      }
      for (Future<byte[]> read : reads) {
        assertThat(read.get()).isEqualTo(bytes);
      }
    } finally {
      threads.shutdownNow();
    }
  }

  /** The ZIP library closes the file when its own object is collected; that must not happen. */
  @Test
  void staysOpenWhileOnlyAStreamIsLeftOfIt() throws Exception {
    Path file = Files.write(folder.resolve("a.3mf"), ZipBytes.minimal().bytes());
    InputStream stream = OpcPackage.open(file, OpcLimits.DEFAULT).stream(MODEL);
    for (int i = 0; i < 5; i++) {
      System.gc();
      Thread.sleep(20);
    }
    assertThat(stream.readAllBytes()).asString().isEqualTo(Packages.MODEL);
    stream.close();
  }

  @Test
  void tellsDamageOnlyToWhoReadsTheStreamToItsEnd() throws Exception {
    ZipBytes zip = ZipBytes.minimal();
    zip.item("3D/3dmodel.model").sum = 1;
    try (OpcPackage opened = open(zip)) {
      InputStream stream = opened.stream(MODEL);
      assertThat(stream.readNBytes(Packages.MODEL.length())).hasSize(Packages.MODEL.length());
      IOException damage = catchThrowableOfType(IOException.class, stream::read);
      assertThat(damage).isInstanceOf(DamageException.class);
      PackageException told = DamageException.asPackageException(MODEL, new IOException(damage));
      assertThat(told.problem().code()).isEqualTo("zip-wrong-checksum");
      PackageException other = DamageException.asPackageException(MODEL, new IOException("torn"));
      assertThat(other.problem().code()).isEqualTo("input-unreadable");
      assertThatThrownBy(opened::requireSound).isInstanceOf(PackageException.class);
    }
  }

  @Test
  void keepsLimitsThatTheCallerSets() {
    OpcLimits small =
        new OpcLimits(
            new OpcLimits.Archive(300, 10, 100, 1000),
            OpcLimits.Inflation.DEFAULT,
            OpcLimits.Xml.DEFAULT);
    assertThat(refusal(ZipBytes.minimal().bytes(), small)).isEqualTo("limit-package-bytes");
    OpcLimits parts =
        new OpcLimits(
            OpcLimits.Archive.DEFAULT,
            new OpcLimits.Inflation(10, 1 << 20, 1 << 20, 5),
            OpcLimits.Xml.DEFAULT);
    assertThatThrownBy(() -> OpcPackage.open(ZipBytes.minimal().bytes(), parts).read(MODEL))
        .isInstanceOfSatisfying(
            PackageException.class,
            e -> assertThat(e.problem().code()).isEqualTo("limit-part-bytes"));
    OpcLimits directory =
        new OpcLimits(
            new OpcLimits.Archive(1 << 20, 10, 100, 50),
            OpcLimits.Inflation.DEFAULT,
            OpcLimits.Xml.DEFAULT);
    assertThat(refusal(ZipBytes.minimal().bytes(), directory)).isEqualTo("limit-directory-bytes");
  }

  @Test
  void saysWhatIsWrongWithAFileThatIsNone() throws Exception {
    assertThatThrownBy(() -> OpcPackage.open(folder, OpcLimits.DEFAULT))
        .isInstanceOf(PackageException.class)
        .hasMessageContaining("this is a folder");
    assertThatThrownBy(() -> OpcPackage.open(folder.resolve("no.3mf"), OpcLimits.DEFAULT))
        .isInstanceOf(PackageException.class)
        .hasMessageContaining("there is no such file");
  }

  private static OpcPackage open(ZipBytes zip) throws PackageException {
    return OpcPackage.open(zip.bytes(), OpcLimits.DEFAULT);
  }

  private static String refusal(byte[] bytes, OpcLimits limits) {
    return catchThrowableOfType(PackageException.class, () -> OpcPackage.open(bytes, limits))
        .problem()
        .code();
  }
}
