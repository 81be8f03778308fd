/**
 * The package around a model: ZIP entries, parts, relationships and content types. Entries that
 * nobody changes are copied as they stand. Trouble is told as a problem with its place.
 */
@NullMarked
package gable.opc;

import org.jspecify.annotations.NullMarked;
