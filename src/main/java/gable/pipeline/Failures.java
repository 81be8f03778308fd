package gable.pipeline;

import gable.plan.Reason;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Reshapers that failed: each is named once for the file, with the first of its failures. */
final class Failures {

  private Failures() {}

  static List<Notice> of(List<ObjectResult> objects) {
    Map<String, List<Reason>> failures = new LinkedHashMap<>();
    for (ObjectResult object : objects) {
      for (FeatureResult feature :
          object.fold(ObjectResult.Examined::features, skipped -> List.<FeatureResult>of())) {
        for (Change change : feature.changes()) {
          change
              .reason()
              .filter(Failures::isFailure)
              .ifPresent(
                  reason ->
                      failures.computeIfAbsent(change.by(), by -> new ArrayList<>()).add(reason));
        }
      }
    }
    return failures.values().stream().map(Failures::notice).toList();
  }

  private static boolean isFailure(Reason reason) {
    return reason.code().equals(Reason.RESHAPER_FAILED)
        || reason.code().equals(Reason.RESHAPER_LATE);
  }

  private static Notice notice(List<Reason> reasons) {
    Reason first = reasons.get(0);
    return Notice.warning(
        first.code(),
        String.format(
            Locale.ROOT,
            "%s; so for %d %s, which keep what the others made of them",
            first.sentence(),
            reasons.size(),
            reasons.size() == 1 ? "feature" : "features"));
  }
}
