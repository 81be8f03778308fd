/** Outlines in the plane across a bore, the sections of its roofs, and planar triangulation. */
@NullMarked
package gable.section;

import org.jspecify.annotations.NullMarked;
