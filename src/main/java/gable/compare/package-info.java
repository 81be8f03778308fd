/**
 * Two packages held against each other, whoever made them: parts, metadata, objects with their
 * meshes, and features by their places.
 */
@NullMarked
package gable.compare;

import org.jspecify.annotations.NullMarked;
