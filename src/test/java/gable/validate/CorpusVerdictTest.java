package gable.validate;

import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.Corpus;
import gable.opc.OpcLimits;
import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.Problem;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Source of all verdicts: the corpus index, which quotes the standard for each file. */
class CorpusVerdictTest {

  /** Files on which this project disagrees with the index; DEVELOPERS.md argues each. */
  private static final Map<String, Verdict> ARGUED = Map.of();

  @Test
  void agreesWithTheIndexOnEveryFileButThoseThatAreArgued() throws IOException {
    Map<String, String> wrong = new TreeMap<>();
    for (Corpus.Entry entry : Corpus.entries()) {
      String name = entry.file().getFileName().toString();
      Validation validation = validate(entry);
      String expected = ARGUED.containsKey(name) ? ARGUED.get(name).word() : entry.verdict();
      if (!validation.verdict().word().equals(expected)) {
        wrong.put(name + " should " + expected, told(validation));
      }
    }
    assertThat(wrong).isEmpty();
  }

  private static Validation validate(Corpus.Entry entry) throws IOException {
    try (OpcPackage source = OpcPackage.open(entry.file(), OpcLimits.DEFAULT)) {
      return Validation.of(source);
    } catch (PackageException e) {
      return Validation.refused(e);
    }
  }

  private static String told(Validation validation) {
    StringBuilder told = new StringBuilder(validation.verdict().word());
    for (Problem finding : validation.findings()) {
      told.append("\n  ").append(finding.severity()).append(' ').append(finding.code());
      told.append(' ').append(finding.sentence());
    }
    return told.append('\n').toString();
  }
}
