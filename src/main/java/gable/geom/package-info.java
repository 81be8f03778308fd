/**
 * Points, vectors, affine maps, planes and exact predicates. Knows no mesh and no file; every
 * length is in the frame and unit of its caller.
 */
@NullMarked
package gable.geom;

import org.jspecify.annotations.NullMarked;
