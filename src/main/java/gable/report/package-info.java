/** Results as text and as JSON, with degrees for people. */
@NullMarked
package gable.report;

import org.jspecify.annotations.NullMarked;
