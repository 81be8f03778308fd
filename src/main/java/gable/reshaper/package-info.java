/**
 * The built-in reshapers. They are found like any plug-in, see features and their surroundings but
 * never the mesh, and no other package names them.
 */
@NullMarked
package gable.reshaper;

import org.jspecify.annotations.NullMarked;
