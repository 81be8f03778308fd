package gable.report;

import gable.pipeline.FeatureResult;
import gable.pipeline.FileResult;
import gable.pipeline.Joints;
import gable.pipeline.Notice;
import gable.pipeline.ObjectResult;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Everything that a result says besides its features, in one order for all reports. */
final class Notices {

  private Notices() {}

  /** Why the file was refused, why objects were left out, then what is said about the file. */
  static List<Notice> of(FileResult result) {
    List<Notice> all = new ArrayList<>();
    refusal(result).forEach(all::add);
    result.objects().stream().flatMap(Notices::skipped).forEach(all::add);
    all.addAll(result.notices());
    return all;
  }

  /** The same for people, with the doubts about joints, which programs find elsewhere. */
  static List<Notice> forPeople(FileResult result) {
    List<Notice> all = of(result);
    for (Joints.Uncertain doubt : result.joints().doubts()) {
      String words = PairWords.doubt(doubt, PairWords::ids);
      all.add(Notice.note(PairWords.code(doubt), words));
    }
    return all;
  }

  /** Objects that were examined. */
  static List<ObjectResult.Examined> examined(FileResult result) {
    return result.objects().stream()
        .<ObjectResult.Examined>flatMap(o -> o.fold(Stream::of, skipped -> Stream.empty()))
        .toList();
  }

  /** Features of an object; none if it was not examined. */
  static List<FeatureResult> features(ObjectResult object) {
    return object.fold(ObjectResult.Examined::features, skipped -> List.of());
  }

  private static Stream<Notice> skipped(ObjectResult object) {
    return object.fold(examined -> Stream.empty(), skipped -> Stream.of(skipped.reason()));
  }

  private static Stream<Notice> refusal(FileResult result) {
    return result.fold(
        new FileResult.Cases<>() {
          @Override
          public Stream<Notice> changed(FileResult.Changed changed) {
            return Stream.empty();
          }

          @Override
          public Stream<Notice> unchanged(FileResult.Unchanged unchanged) {
            return Stream.empty();
          }

          @Override
          public Stream<Notice> rejected(FileResult.Rejected rejected) {
            return Stream.of(rejected.reason());
          }
        });
  }
}
