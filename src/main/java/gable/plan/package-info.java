/**
 * What shall be done to each feature: the plug-in point, convex cuts with their intent, limits that
 * an engineer may choose, and the reasons for leaving a feature alone.
 */
@NullMarked
package gable.plan;

import org.jspecify.annotations.NullMarked;
