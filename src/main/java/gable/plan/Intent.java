package gable.plan;

import gable.feature.Feature;

/**
 * What an edit is meant to do, for whoever judges it.
 *
 * @param feature the feature to be changed
 * @param cut the cut that the edit carries out
 * @param limits slope limit and longest bridge
 * @param bridge width of the flat top that is meant, in millimetres; 0 if none is
 * @param slopeSlack how much flatter than the limit a new facet may be because coordinates are
 *     rounded and vertices of the wall stray, in radians
 */
public record Intent(Feature feature, Cut cut, Limits limits, double bridge, double slopeSlack) {}
