package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Source of all verdicts: the corpus index, which quotes 3MF Core and OPC for each file. */
class CorpusTest {

  @Test
  void opensEveryFileThatAConformingReaderOpensAndFindsItsBytesSound() throws Exception {
    List<String> refused = new ArrayList<>();
    for (Corpus.Entry entry : Corpus.entries()) {
      if (entry.verdict().equals("fail")) {
        continue;
      }
      try (OpcPackage opened = OpcPackage.open(entry.file(), OpcLimits.DEFAULT)) {
        opened.requireSound();
        assertThat(opened.read(opened.rootModelPart().name())).isNotEmpty();
      } catch (PackageException e) {
        refused.add(entry + ": " + e.getMessage());
      }
    }
    assertThat(refused).isEmpty();
  }

  @Test
  void refusesTheFilesWhosePackageIsWrong() {
    Corpus.entries(); // leaves the test out when there is no corpus
    checkRefused("MUSTFAIL_Chapter2.1.1a_PartsRelationships_NonExist3DModelPart", "3mf-no-model");
    checkRefused(
        "MUSTFAIL_Chapter2.1.2_PartsRelationships_MoreThanOne3DModelPart", "3mf-two-models");
    checkRefused(
        "MUSTFAIL_Chapter2.1.3_PartsRelationships_NonExistThumbnailPart", "3mf-target-missing");
    checkRefused(
        "MUSTFAIL_Chapter2.1.4_PartsRelationships_MoreThanOnePrintTicket", "3mf-two-print-tickets");
    checkRefused("lib3mf_Reader_CS-1111_3dmodel-e1r1_other-e1r1", "3mf-two-models");
    checkRefused("lib3mf_Reader_DOS-FUZ-LIB3MF", "zip-wrong-checksum");
  }

  private static void checkRefused(String name, String code) {
    Corpus.Entry entry =
        Corpus.entries().stream()
            .filter(e -> e.file().getFileName().toString().equals(name + ".3mf"))
            .findFirst()
            .orElseThrow();
    assertThatThrownBy(() -> OpcPackage.open(entry.file(), OpcLimits.DEFAULT).requireSound())
        .isInstanceOfSatisfying(
            PackageException.class,
            e -> assertThat(e.problems()).extracting(Problem::code).contains(code));
  }

  /**
   * Writing a file anew with the bytes that its model part has already. All items but that one must
   * come out as they were, header and deflated bytes included, and in the same order.
   */
  @Test
  void copiesEveryOtherItemByteForByte() throws Exception {
    for (Corpus.Entry entry : Corpus.entries()) {
      if (entry.verdict().equals("fail")) {
        continue;
      }
      byte[] input = Files.readAllBytes(entry.file());
      try (OpcPackage source = OpcPackage.open(input, OpcLimits.DEFAULT)) {
        String model = source.rootModelPart().name();
        PackageEdit edit = PackageEdit.NONE.replace(model, PartContent.of(source.read(model)));
        byte[] output = write(source, edit);
        assertThat(write(source, PackageEdit.NONE)).as(entry + " unchanged").isEqualTo(input);
        try (OpcPackage written = OpcPackage.open(output, OpcLimits.DEFAULT)) {
          checkSame(entry, source, written, model);
        }
      }
    }
  }

  private static void checkSame(
      Corpus.Entry entry, OpcPackage source, OpcPackage written, String model) throws Exception {
    assertThat(written.problems()).as("%s", entry).isEqualTo(source.problems());
    assertThat(written.read(model)).as("%s", entry).isEqualTo(source.read(model));
    List<ZipItem> before = source.archive().items();
    List<ZipItem> after = written.archive().items();
    assertThat(after)
        .extracting(ZipItem::name)
        .isEqualTo(before.stream().map(ZipItem::name).toList());
    for (int i = 0; i < before.size(); i++) {
      if (!PartNames.ofItem(before.get(i).name()).equals(model)) {
        byte[] old = bytes(source, before.get(i).whole());
        assertThat(bytes(written, after.get(i).whole())).as("%s", before.get(i)).isEqualTo(old);
      }
      assertThat(after.get(i).entry().getTime()).isEqualTo(before.get(i).entry().getTime());
    }
  }

  private static byte[] bytes(OpcPackage opened, Span span) throws IOException {
    return opened.archive().file().bytes(span).array();
  }

  private static byte[] write(OpcPackage source, PackageEdit edit) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PackageWriter.write(source, edit, Compression.serial(6), out);
    return out.toByteArray();
  }
}
