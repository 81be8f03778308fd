package gable.feature;

import java.util.List;

/**
 * Relates bores on one axis: ends that open into a larger or a smaller one, and pieces of the same
 * radius, which share a group.
 */
final class Coaxial {

  private Coaxial() {}

  static List<Bore.Builder> related(List<Bore.Builder> bores) {
    return bores;
  }
}
