package gable.feature;

import java.util.List;

/**
 * What was found on one part.
 *
 * @param features features, in the order of their ids
 * @param notes things that are no features but may be taken for one
 */
public record Findings(List<Feature> features, List<Note> notes) {

  /** Copies the lists. */
  public Findings {
    features = List.copyOf(features);
    notes = List.copyOf(notes);
  }
}
