package gable.pipeline;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Ids that the user chose and that no feature has. */
final class Strays {

  private Strays() {}

  static List<Notice> of(Choice choice, List<ObjectResult> objects) {
    Set<String> stray = new TreeSet<>(choice.only());
    stray.addAll(choice.skip());
    stray.removeAll(ids(objects));
    List<Notice> notices = new ArrayList<>();
    for (String id : stray) {
      notices.add(
          Notice.warning(
              "unknown-id", "no feature has the id '" + id + "'; gable inspect lists the ids"));
    }
    return notices;
  }

  private static Set<String> ids(List<ObjectResult> objects) {
    Set<String> ids = new HashSet<>();
    for (ObjectResult object : objects) {
      List<FeatureResult> features =
          object.fold(ObjectResult.Examined::features, skipped -> List.of());
      for (int use = 0; use < object.place().uses().size(); use++) {
        for (FeatureResult result : features) {
          ids.add(object.place().featureId(result.feature().id(), use));
        }
      }
    }
    return ids;
  }
}
