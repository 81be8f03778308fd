package gable.plan;

import java.util.List;

/**
 * One way of changing a feature.
 *
 * @param profile name of the shape, such as {@code peaked} or {@code flat-topped}
 * @param cuts the cuts, made in this order; together they are the change
 * @param measures what a reader wants to know of it
 */
public record Variant(String profile, List<Cut> cuts, List<Measure> measures) {

  /** Copies the lists. */
  public Variant {
    cuts = List.copyOf(cuts);
    measures = List.copyOf(measures);
  }
}
