package gable.plan;

import gable.feature.Feature;
import gable.feature.Surroundings;
import java.util.List;
import java.util.Optional;

/**
 * Something that knows how to improve one kind of feature: the plug-in point. Implementations are
 * found with {@link java.util.ServiceLoader} and need a public constructor without parameters.
 *
 * <p>A reshaper sees a feature and what is around it, in print space, and answers with convex
 * bodies to take away or add. It never sees or changes the mesh: the cuts are made and proved by
 * others, so that a reshaper may be wrong but cannot make a solid unsound. It must not keep state
 * between calls; several threads may call it at once.
 */
public interface Reshaper {

  /** Short name, lower-case, unique among the installed: by it users choose. */
  String name();

  /** When it works. */
  Phase phase();

  /** One line for the list of installed reshapers: what it does to which feature. */
  String summary();

  /** Whether it works without being asked for by name. */
  default boolean onByItself() {
    return true;
  }

  /** Whether it works without being asked for on features that are half of a joint. */
  default boolean onForJoints() {
    return false;
  }

  /** Names of the settings that it goes by, such as {@code slope}; they are those of options. */
  default List<String> settings() {
    return List.of();
  }

  /**
   * What should be done to a feature.
   *
   * @param feature the feature as measured
   * @param around the solid as it is now, earlier changes included
   * @param limits what the user allows
   * @return a proposal, or nothing if features of this kind are not its business
   */
  Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits);

  /** Order of work on one feature; within a phase reshapers go by name. */
  enum Phase {
    /** Roofs of bores. */
    ROOF,
    /** Eased mouths. */
    LEAD_IN,
    /** Slots and gussets. */
    SLOT,
    /** Tips of pins. */
    TIP
  }
}
