/**
 * Judges an edit from the mesh before, the edit and its intent, without knowing the code that made
 * it.
 */
@NullMarked
package gable.verify;

import org.jspecify.annotations.NullMarked;
