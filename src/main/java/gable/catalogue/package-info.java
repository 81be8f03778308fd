/**
 * Whole folders of models in one go: which files there are, what is known of them from an earlier
 * run, work on several at once within limits of memory and time, and the tables and the page that
 * show the results.
 */
@NullMarked
package gable.catalogue;

import org.jspecify.annotations.NullMarked;
