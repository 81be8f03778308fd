package gable.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What mutants brought to light and needs a whole package to show. */
class FoundByFuzzingTest {

  @TempDir private Path folder;

  /** What comes of a fixture in which a text of its model is another. */
  private String outcome(String fixture, String text, String other) throws Exception {
    Draft draft = Draft.of(Files.readAllBytes(Path.of("fixtures", fixture)));
    for (int i = 0; i < draft.items().size(); i++) {
      Draft.Item item = draft.items().get(i);
      if (item.isModel()) {
        assertThat(item.content()).contains(text);
        String content = item.content().replace(text, other);
        draft.items().set(i, new Draft.Item(item.name(), content));
      }
    }
    return outcome(draft);
  }

  private String outcome(Draft draft) throws IOException, Soundness.Unsound {
    return new Oracle(folder).check(draft.packed(false), Chance.of(0, 0));
  }

  @Test
  void aRoofWithNothingAboveItIsNoEndlesslyHighOne() throws Exception {
    String corner = "x=\"0.933781\" y=\"10\" z=\"13.88948\"";
    String outcome = outcome("bore/slanted-d8.3mf", corner, corner.replace("10", "82"));

    assertThat(outcome).isEqualTo("unchanged");
  }

  @Test
  void aSecondByteOrderMarkIsNotSkipped() throws Exception {
    String outcome = outcome("bore/slanted-d8.3mf", "<?xml", "\uFEFF\uFEFF<?xml");

    assertThat(outcome).isEqualTo("refused: xml-not-well-formed");
  }
}
