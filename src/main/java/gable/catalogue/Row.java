package gable.catalogue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * One model in short, as tables and the page show it.
 *
 * @param file its name
 * @param result {@code changed}, {@code unchanged} or {@code rejected}
 * @param cause why it was rejected, in one word; empty if it was not
 * @param message the same in a sentence
 * @param reshaped features that were reshaped
 * @param left features that were left
 * @param open features that were left although they hang in the air or may do so
 * @param remarks notices that are warnings or errors
 * @param before overhang before, in square millimetres
 * @param after overhang after
 * @param reasons how many features were left for each reason
 * @param sentences one sentence for each of those reasons
 * @param reported whether there is a report of it
 * @param pictures how many pictures there are, 0 to 2
 */
public record Row(
    String file,
    String result,
    String cause,
    String message,
    int reshaped,
    int left,
    int open,
    int remarks,
    double before,
    double after,
    Map<String, Integer> reasons,
    Map<String, String> sentences,
    boolean reported,
    int pictures) {

  /** Reasons that need nobody's attention: no roof or chamfer is wanted there. */
  private static final Set<String> FINE =
      Set.of(
          "steep-enough",
          "already-peaked",
          "not-chosen",
          "eased-already",
          "tip-not-flat",
          "on-plate",
          "short-pin",
          "above-widest-pin");

  /** Copies the maps. */
  public Row {
    reasons = Map.copyOf(reasons);
    sentences = Map.copyOf(sentences);
  }

  static Row of(Entry entry) {
    JsonNode report = entry.tree();
    Map<String, Integer> reasons = new TreeMap<>();
    Map<String, String> sentences = new TreeMap<>();
    int reshaped = 0;
    for (JsonNode feature : report.path("features")) {
      JsonNode reason = feature.path("reason");
      if (reason.isMissingNode()) {
        reshaped++;
      } else {
        reasons.merge(reason.path("code").asText(), 1, Integer::sum);
        sentences.putIfAbsent(reason.path("code").asText(), reason.path("message").asText());
      }
    }
    JsonNode own = report.path("catalogue");
    int left = reasons.values().stream().mapToInt(Integer::intValue).sum();
    int fine = FINE.stream().mapToInt(code -> reasons.getOrDefault(code, 0)).sum();
    return new Row(
        entry.file(),
        report.path("result").asText(),
        own.path("cause").asText(),
        own.path("cause").asText().isEmpty() ? "" : message(report.path("notices").path(0)),
        reshaped,
        left,
        left - fine,
        remarks(report.path("notices")),
        own.path("overhangMm2").path("before").asDouble(),
        own.path("overhangMm2").path("after").asDouble(),
        reasons,
        sentences,
        !own.path("report").asText().isEmpty(),
        entry.pictures());
  }

  private static String message(JsonNode notice) {
    String place = notice.path("place").asText();
    return (place.isEmpty() ? "" : place + ": ") + notice.path("message").asText();
  }

  private static int remarks(JsonNode notices) {
    int count = 0;
    for (JsonNode notice : notices) {
      count += notice.path("level").asText().equals("note") ? 0 : 1;
    }
    return count;
  }

  /** Whether the model was rejected. */
  public boolean isRejected() {
    return result.equals("rejected");
  }
}
