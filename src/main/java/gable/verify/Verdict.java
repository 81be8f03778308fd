package gable.verify;

import java.util.OptionalDouble;
import java.util.function.Function;

/** What came of judging an edit. */
public sealed interface Verdict permits Verdict.Sound, Verdict.Unsound {

  /** Every proof holds. */
  record Sound(Evidence evidence) implements Verdict {}

  /**
   * A proof fails; the edit must not be made.
   *
   * @param proof which one
   * @param why what was found and what was needed, as the end of a sentence
   */
  record Unsound(Proof proof, String why) implements Verdict {}

  /** The proofs, in the order in which they are tried. */
  enum Proof {
    /** Numbers of facets and vertices exist and are distinct. */
    INDICES,
    /** Every edge belongs to two facets in opposite directions. */
    CLOSED,
    /** The facets around a vertex form one fan. */
    FANS,
    /** Facets have an area. */
    AREA,
    /** Facets have corners and an area, and face the same way, in single precision. */
    SINGLE_PRECISION,
    /** The Euler characteristic stays, no shell appears or disappears. */
    TOPOLOGY,
    /** New facets lie in the old ones that they come from, or on the tool. */
    PLACE,
    /** The whole of the tool is cut, and nothing but what belongs to the feature. */
    EXTENT,
    /** Facets do not meet but in common corners and edges. */
    CROSSING,
    /** The volume changes by what the tool and the solid have in common. */
    VOLUME,
    /** No new face hangs flatter than allowed. */
    SLOPE
  }

  /**
   * What was measured while proving, in millimetres and radians.
   *
   * @param volumeChange change of the enclosed volume in cubic millimetres
   * @param volumeInTool the same by the second method: change of what the solid fills of the tool
   * @param volumeTolerance how much the two may differ
   * @param leastSlope least slope of the new facets that hang, bridges apart; π/2 if none hangs
   * @param bridge width of the flat top across the feature; 0 if there is none
   * @param roofLeft height of solid straight above the middle of the ridge, if there is any
   */
  record Evidence(
      double volumeChange,
      double volumeInTool,
      double volumeTolerance,
      double leastSlope,
      double bridge,
      OptionalDouble roofLeft) {}

  /** One of two answers. */
  default <T> T fold(Function<Sound, T> sound, Function<Unsound, T> unsound) {
    return this instanceof Sound good ? sound.apply(good) : unsound.apply((Unsound) this);
  }
}
