/** Benchmarks, compiled by every build and run with the profile {@code bench}. */
@NullMarked
package gable.bench;

import org.jspecify.annotations.NullMarked;
