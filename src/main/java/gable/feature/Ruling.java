package gable.feature;

/**
 * A straight line of a prismatic wall, parallel to the axis: one corner of the section.
 *
 * @param u sideways coordinate in the section frame, in millimetres
 * @param v upward coordinate in the section frame
 * @param deviation largest distance of a vertex on it from (u, v)
 * @param wMin smallest coordinate along the axis of a vertex on it
 * @param wMax largest coordinate along the axis
 */
public record Ruling(double u, double v, double deviation, double wMin, double wMax) {}
