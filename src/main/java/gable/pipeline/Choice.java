package gable.pipeline;

import java.util.Set;

/**
 * Which features and reshapers the user wants.
 *
 * @param only ids of the features to change; empty for all
 * @param skip ids of features to leave
 * @param with names of reshapers to use besides those that are on by themselves
 * @param without names of reshapers not to use
 */
public record Choice(Set<String> only, Set<String> skip, Set<String> with, Set<String> without) {

  /** Everything that is on by itself. */
  public static final Choice USUAL = new Choice(Set.of(), Set.of(), Set.of(), Set.of());

  /** Copies the sets. */
  public Choice {
    only = Set.copyOf(only);
    skip = Set.copyOf(skip);
    with = Set.copyOf(with);
    without = Set.copyOf(without);
  }

  /**
   * Whether a feature may be changed. Every place of an object counts: the ids of all of them mean
   * the same feature, since the object exists once.
   */
  boolean chooses(ObjectPlace place, String local) {
    return (only.isEmpty() || names(only, place, local)) && !names(skip, place, local);
  }

  private static boolean names(Set<String> ids, ObjectPlace place, String local) {
    for (int use = 0; use < place.uses().size(); use++) {
      if (ids.contains(place.featureId(local, use))) {
        return true;
      }
    }
    return false;
  }
}
