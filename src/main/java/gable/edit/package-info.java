/** The kernel of convex cuts: turns what is planned into an edit of the mesh. */
@NullMarked
package gable.edit;

import org.jspecify.annotations.NullMarked;
