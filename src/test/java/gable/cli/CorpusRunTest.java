package gable.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gable.opc.Corpus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files of others go the whole way. What an editor should do with each is a column of the corpus
 * index, which quotes the standard.
 */
class CorpusRunTest {

  @TempDir private Path temporary;

  @Test
  void everyFileIsDoneOrRefusedInWords() throws IOException {
    List<String> faults = new ArrayList<>();
    for (Corpus.Entry entry : Corpus.entries()) {
      Path out = temporary.resolve("out.3mf");
      Call call = Call.of("reshape", entry.file().toString(), "-o", out.toString(), "--json", "-");
      boolean done = call.code() == 0;
      if (!done && call.code() != 3 && call.code() != 5) {
        faults.add(entry + " ended with " + call.code() + ": " + call.err());
      }
      if (done != Files.exists(out)) {
        faults.add(entry + " ended with " + call.code() + ", output there: " + !done);
      }
      boolean unchanged = call.text().contains("\"result\" : \"unchanged\"");
      if (done && unchanged && Files.mismatch(entry.file(), out) >= 0) {
        faults.add(entry + " was not changed, but its bytes were");
      }
      if (entry.editor().startsWith("refuse") && !unchanged && done) {
        faults.add(entry + " was changed, the index says: " + entry.editor());
      }
      if (entry.editor().startsWith("edit") && !done) {
        faults.add(entry + " was refused, the index says: " + entry.editor() + ": " + call.err());
      }
      Files.deleteIfExists(out);
    }
    assertThat(faults).isEmpty();
  }
}
