package gable.compare;

import gable.pipeline.FeatureResult;
import gable.pipeline.ObjectPlace;
import java.util.Optional;

/**
 * A feature in one or both files.
 *
 * @param kind what became of it
 * @param before the feature in the first file
 * @param after the feature in the second file
 */
public record FeaturePair(Kind kind, Optional<Placed> before, Optional<Placed> after) {

  /**
   * A feature with the object that has it.
   *
   * @param result the feature
   * @param body the object
   */
  public record Placed(FeatureResult result, Body body) {

    /** Its id in its file. */
    public String id() {
      ObjectPlace place = body.result().place();
      return place.featureId(result.feature().id(), 0);
    }
  }
}
