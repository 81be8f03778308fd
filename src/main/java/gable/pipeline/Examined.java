package gable.pipeline;

import gable.feature.Feature;
import java.util.List;
import java.util.Optional;

/**
 * What is known of an object before anything is done to it.
 *
 * @param features what was found, in the order of ids
 * @param unfit why it could not be examined, if so
 * @param prepared its mesh, if it is kept
 */
record Examined(List<Feature> features, Optional<Notice> unfit, Optional<Prepared> prepared) {

  Examined {
    features = List.copyOf(features);
  }
}
