/**
 * The model parts inside a package: objects, components, build items and metadata. Reads meshes
 * into flat arrays and writes edits by replacing named spans of the original text.
 */
@NullMarked
package gable.threemf;

import org.jspecify.annotations.NullMarked;
