package gable.catalogue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Optional;

/**
 * What is known of a file that was worked on: a line of the journal.
 *
 * @param file name of the model
 * @param key of the bytes of the input, the settings and the version
 * @param output SHA-256 of what was written; empty if nothing was
 * @param pictures how many pictures were drawn, 0 to 2
 * @param report the result as {@code gable-report/1}, one line without its line feed
 */
record Entry(String file, String key, String output, int pictures, String report) {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** One line, without its line feed. */
  String line() {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      json.writeStartObject();
      json.writeStringField("file", file);
      json.writeStringField("key", key);
      json.writeStringField("output", output);
      json.writeNumberField("pictures", pictures);
      json.writeStringField("report", report);
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot fail", e);
    }
    return text.toString();
  }

  /** The entry in a line; nothing if the line is torn or something else. */
  static Optional<Entry> parse(String line) {
    try {
      JsonNode node = MAPPER.readTree(line);
      boolean whole =
          node != null
              && node.path("file").isTextual()
              && node.path("key").isTextual()
              && node.path("output").isTextual()
              && node.path("pictures").isInt()
              && node.path("report").isTextual();
      return whole
          ? Optional.of(
              new Entry(
                  node.path("file").textValue(),
                  node.path("key").textValue(),
                  node.path("output").textValue(),
                  node.path("pictures").intValue(),
                  node.path("report").textValue()))
          : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** The report as a tree. */
  JsonNode tree() {
    try {
      return MAPPER.readTree(report);
    } catch (IOException e) {
      throw new UncheckedIOException("the journal holds a report that is none", e);
    }
  }
}
