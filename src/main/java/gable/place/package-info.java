/**
 * Walks the build items down to meshes and yields each as it lies on the plate, in print space:
 * millimetres, z along the build direction.
 */
@NullMarked
package gable.place;

import org.jspecify.annotations.NullMarked;
