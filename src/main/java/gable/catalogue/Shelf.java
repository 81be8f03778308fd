package gable.catalogue;

import com.fasterxml.jackson.core.JsonGenerator;
import gable.pipeline.Gable;
import gable.report.Digest;
import gable.report.JsonReport;
import gable.report.Tool;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Knows what is in place, and puts finished work there: first the files, then the line in the
 * journal. If the program is killed in between, the work is done again and gives the same.
 */
final class Shelf {

  private static final List<String> ENDINGS = List.of("-before.png", "-after.png");
  private static final String REPORT = ".html";

  private final Folder folder;
  private final Journal journal;
  private final JsonReport report;
  private final String way;
  private final boolean reports;

  /** A shelf for results of these settings. */
  Shelf(Folder folder, Journal journal, Gable gable, Plan plan) {
    this.folder = folder;
    this.journal = journal;
    this.report = new JsonReport(Tool.here(), plan.settings(), plan.dryRun());
    String names = String.join(",", new TreeSet<>(gable.names()));
    String wish = plan.reports() ? "reports" : "";
    this.reports = plan.reports();
    // a notice tells the hash of the jar that a plug-in comes from
    String origins = gable.notices().toString();
    this.way = Tool.here().version() + "\n" + report.settings() + names + origins + wish + "\n";
  }

  /** Name of a picture of a model, below the output folder. */
  static String picture(String model, int number) {
    return Folder.about(model, ENDINGS.get(number));
  }

  /** Name of the report of a model, below the output folder. */
  static String report(String model) {
    return Folder.about(model, REPORT);
  }

  private String key(String sha256) {
    return Digest.of(way + sha256);
  }

  /** What an earlier run made of a model, if that is still right and in place. */
  Optional<Entry> known(ModelFile model) {
    try {
      Optional<Entry> entry = journal.of(model.name());
      return entry.isPresent()
              && entry.get().key().equals(key(Digest.of(model.path())))
              && isInPlace(model, entry.get())
          ? entry
          : Optional.empty();
    } catch (IOException e) {
      return Optional.empty(); // working on it again will say what is wrong
    }
  }

  private boolean isInPlace(ModelFile model, Entry entry) throws IOException {
    for (int number = 0; number < entry.pictures(); number++) {
      if (!Files.isRegularFile(folder.below(picture(model.name(), number)))) {
        return false;
      }
    }
    if (reports && !Files.isRegularFile(folder.below(report(model.name())))) {
      return false;
    }
    return entry.output().isEmpty() || isOurs(model, entry);
  }

  private boolean isOurs(ModelFile model, Entry entry) throws IOException {
    Path output = folder.output(model);
    return Files.isRegularFile(output) && Digest.of(output).equals(entry.output());
  }

  /** What a run that writes nothing knows of a model. */
  Entry entry(ModelFile model, Made made, String output) {
    String line =
        report
            .line(made.result(), json -> extend(json, model.name(), made, output))
            .stripTrailing();
    String key = key(made.result().source().sha256());
    return new Entry(model.name(), key, output, made.pictures().size(), line);
  }

  /** Puts finished work in place. */
  Entry put(ModelFile model, Made made, long number) throws IOException {
    String output = "";
    if (made.output().isPresent()) {
      output = Digest.of(made.output().get());
      Folder.move(made.output().get(), folder.output(model));
    } else {
      removeOurs(model);
    }
    for (int picture = 0; picture < ENDINGS.size(); picture++) {
      String name = picture(model.name(), picture);
      if (picture < made.pictures().size()) {
        folder.put(made.pictures().get(picture), name, number);
      } else {
        Files.deleteIfExists(folder.below(name));
      }
    }
    String page = report(model.name());
    if (made.report().isPresent()) {
      folder.put(made.report().get().getBytes(StandardCharsets.UTF_8), page, number);
    } else {
      Files.deleteIfExists(folder.below(page));
    }
    Entry entry = entry(model, made, output);
    if (isLasting(made)) {
      journal.add(entry);
    }
    return entry;
  }

  /** A rejection that another machine, or a better day, would not repeat is tried again. */
  static boolean isLasting(Made made) {
    return !made.result().source().sha256().isEmpty()
        && !made.cause().equals("not-written")
        && !made.result().dependsOnTime();
  }

  /** What an earlier run wrote must not stay beside a report that says nothing was written. */
  private void removeOurs(ModelFile model) throws IOException {
    Optional<Entry> entry = journal.of(model.name());
    if (entry.isPresent() && isOurs(model, entry.get())) {
      Files.delete(folder.output(model));
    }
  }

  private static void extend(JsonGenerator json, String model, Made made, String output)
      throws IOException {
    json.writeObjectFieldStart("catalogue");
    json.writeStringField("cause", made.cause());
    json.writeStringField("outputSha256", output);
    json.writeArrayFieldStart("pictures");
    for (int number = 0; number < made.pictures().size(); number++) {
      json.writeString(picture(model, number));
    }
    json.writeEndArray();
    json.writeStringField("report", made.report().isPresent() ? report(model) : "");
    json.writeObjectFieldStart("overhangMm2");
    json.writeNumberField("before", rounded(made.overhang().before()));
    json.writeNumberField("after", rounded(made.overhang().after()));
    json.writeEndObject();
    json.writeEndObject();
  }

  private static BigDecimal rounded(double value) {
    return BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_EVEN);
  }
}
