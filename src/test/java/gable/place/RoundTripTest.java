package gable.place;

import static org.assertj.core.api.Assertions.assertThat;

import gable.geom.Vec3;
import gable.opc.Compression;
import gable.opc.Corpus;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageWriter;
import gable.threemf.Changes;
import gable.threemf.Edits;
import gable.threemf.MeshObject;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import gable.threemf.ModelWriter;
import gable.threemf.ObjectEdit;
import gable.threemf.SplicedPart;
import gable.validate.Validation;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * An edit is forced into a file: one triangle of one mesh is split into three. Then everything else
 * must be as it was. Source: core specification 1.4, Preface; decisions of this project (what is
 * not edited is copied). The results are left in {@code target/roundtrip}, where the reference
 * library of the consortium reads them in a submission.
 */
class RoundTripTest {

  private static final Path RESULTS = Path.of("target", "roundtrip");

  @Test
  @DisplayName("C Preface: an edit of one triangle changes nothing else in any fixture")
  void keepsAllElseOfTheFixtures() throws Exception {
    Path folder = Path.of("fixtures");
    int edits = 0;
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(RoundTripTest::isSoundFixture).sorted().toList()) {
        edits += edited(file, RESULTS.resolve("fixtures").resolve(folder.relativize(file)));
      }
    }
    assertThat(edits).as("edits").isGreaterThan(50);
  }

  private static boolean isSoundFixture(Path file) {
    return file.toString().endsWith(".3mf") && !file.toString().contains("broken");
  }

  @Test
  @DisplayName(
      "C Preface: an edit of one triangle changes nothing else in any editable corpus file")
  void keepsAllElseOfTheCorpus() throws Exception {
    int files = 0;
    for (Corpus.Entry entry : Corpus.entries()) {
      if (entry.verdict().equals("fail")) {
        continue;
      }
      int edits = edited(entry.file(), RESULTS.resolve("corpus").resolve(entry.path()));
      files += edits > 0 ? 1 : 0;
      boolean editable = entry.editor().startsWith("edit");
      assertThat(edits > 0 || !editable).as(entry + ": editable").isTrue();
    }
    assertThat(files).as("files with an edit").isGreaterThan(40);
  }

  /** Edits each mesh that may be edited, one after the other; the last result is kept. */
  private static int edited(Path file, Path result) throws Exception {
    byte[] input = Files.readAllBytes(file);
    int count = 0;
    try (OpcPackage source = OpcPackage.open(input, OpcLimits.DEFAULT)) {
      ModelPackage model = ModelPackage.read(source, ModelLimits.USUAL);
      Set<MeshObject> seen = new LinkedHashSet<>();
      for (PlacedObject placed : Placements.of(model, Vec3.Z, ModelLimits.USUAL).placed()) {
        boolean free = placed.object().locked().isEmpty() && seen.add(placed.object());
        if (free) {
          ObjectEdit edit = Edits.split(placed.object(), 0, placed.grid(), List.of());
          byte[] output = check(file, source, ModelWriter.splice(model, List.of(edit)), input);
          Files.createDirectories(result.getParent());
          Files.write(result, output);
          count++;
        }
      }
    }
    return count;
  }

  private static byte[] check(Path file, OpcPackage source, Changes changes, byte[] input)
      throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PackageWriter.write(source, changes.packageEdit(), Compression.serial(6), out);
    byte[] output = out.toByteArray();
    List<String> changed = changes.parts().stream().map(SplicedPart::name).toList();
    assertThat(changes.clones()).as("%s", file).isEmpty();
    checkItems(file, input, output, changed);
    try (OpcPackage written = OpcPackage.open(output, OpcLimits.DEFAULT)) {
      checkTexts(file, source, written, changed);
      checkFindings(file, Validation.of(source), Validation.of(written));
    }
    return output;
  }

  private static void checkItems(Path file, byte[] input, byte[] output, List<String> changed)
      throws IOException {
    Map<String, byte[]> before = raw(input);
    Map<String, byte[]> after = raw(output);
    assertThat(List.copyOf(after.keySet())).as("%s", file).isEqualTo(List.copyOf(before.keySet()));
    before.forEach(
        (name, bytes) -> {
          if (!changed.contains("/" + name)) {
            assertThat(after.get(name)).as(file + " " + name).isEqualTo(bytes);
          }
        });
  }

  /** Packed bytes of all items, with what their headers say in front. */
  private static Map<String, byte[]> raw(byte[] zip) throws IOException {
    Map<String, byte[]> items = new LinkedHashMap<>();
    try (ZipFile archive = ZipFile.builder().setByteArray(zip).get()) {
      for (ZipArchiveEntry entry : Collections.list(archive.getEntries())) {
        ByteArrayOutputStream item = new ByteArrayOutputStream();
        String head =
            entry.getMethod()
                + " "
                + entry.getCrc()
                + " "
                + entry.getTime()
                + " "
                + entry.getExternalAttributes()
                + " "
                + entry.getComment()
                + "\n";
        item.writeBytes(head.getBytes(StandardCharsets.UTF_8));
        item.writeBytes(archive.getRawInputStream(entry).readAllBytes());
        items.put(entry.getName(), item.toByteArray());
      }
    }
    return items;
  }

  private static void checkTexts(
      Path file, OpcPackage source, OpcPackage written, List<String> changed) throws Exception {
    List<Integer> sum = new ArrayList<>(List.of(0, 0, 0));
    for (String part : changed) {
      String before = new String(source.read(part), StandardCharsets.UTF_8);
      String after = new String(written.read(part), StandardCharsets.UTF_8);
      TagDiff diff = TagDiff.of(before, after);
      assertThat(diff.faults()).as(file + " " + part).isEmpty();
      for (int k = 0; k < 3; k++) {
        sum.set(k, sum.get(k) + diff.mesh().get(k));
      }
      boolean named = before.contains(":UUID=\"");
      assertThat(diff.uuids() > 0).as(file + ": new UUIDs").isEqualTo(named);
    }
    assertThat(sum).as("%s: vertices, triangles", file).containsExactly(1, 1, 2);
  }

  /** No rule is broken that was kept, and none more often. */
  private static void checkFindings(Path file, Validation before, Validation after) {
    after
        .counts()
        .forEach(
            (code, count) ->
                assertThat(count)
                    .as("%s: %s", file, code)
                    .isLessThanOrEqualTo(before.counts().getOrDefault(code, 0)));
  }
}
