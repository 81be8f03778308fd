package gable.pipeline;

import java.util.List;
import java.util.function.Function;

/** What became of one object. */
public sealed interface ObjectResult {

  /** The object and where it lies. */
  ObjectPlace place();

  /** The one of the two functions that fits, applied. */
  <T> T fold(Function<Examined, T> examined, Function<Skipped, T> skipped);

  /**
   * The object was examined.
   *
   * @param place the object
   * @param features all features, each with its outcome, in the order of their ids
   */
  record Examined(ObjectPlace place, List<FeatureResult> features) implements ObjectResult {

    /** Copies the list. */
    public Examined {
      features = List.copyOf(features);
    }

    @Override
    public <T> T fold(Function<Examined, T> examined, Function<Skipped, T> skipped) {
      return examined.apply(this);
    }
  }

  /**
   * The object could not be examined, or must not be.
   *
   * @param place the object; without uses if it is not in the build
   * @param reason why
   */
  record Skipped(ObjectPlace place, Notice reason) implements ObjectResult {

    @Override
    public <T> T fold(Function<Examined, T> examined, Function<Skipped, T> skipped) {
      return skipped.apply(this);
    }
  }
}
