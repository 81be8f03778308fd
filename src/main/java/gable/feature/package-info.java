/**
 * Finds bores and pins in one mesh in print space and measures them once, with their ends and what
 * surrounds them. Decides nothing.
 */
@NullMarked
package gable.feature;

import org.jspecify.annotations.NullMarked;
