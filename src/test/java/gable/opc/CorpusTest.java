package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
}
