/**
 * Triangle meshes in flat arrays: neighbours, searching, and edits as data. Facet f owns the
 * half-edges 3f, 3f+1 and 3f+2; facets that stay keep their numbers.
 */
@NullMarked
package gable.mesh;

import org.jspecify.annotations.NullMarked;
