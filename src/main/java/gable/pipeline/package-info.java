/** The library: from a package to a package, stage by stage, with all threads and no printing. */
@NullMarked
package gable.pipeline;

import org.jspecify.annotations.NullMarked;
