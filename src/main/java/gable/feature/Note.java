package gable.feature;

import gable.geom.Axis;

/**
 * Something that looks like a bore and is none.
 *
 * @param kind what it is
 * @param axis its axis
 * @param radius its radius in millimetres
 * @param covered angle in radians that its wall covers
 */
public record Note(Kind kind, Axis axis, double radius, double covered) {

  /** What was found instead of a bore. */
  public enum Kind {
    /** The radius changes along the axis, or the section is not a circle. */
    NOT_A_CYLINDER,
    /** Less than a full turn of wall: a slot's end, a channel, an inside fillet. */
    ARC,
    /** The wall is full, but its ends could not be told apart. */
    NO_ENDS
  }
}
