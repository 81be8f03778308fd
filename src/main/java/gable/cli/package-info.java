/** Commands, options and exit codes; the only package that prints. */
@NullMarked
package gable.cli;

import org.jspecify.annotations.NullMarked;
