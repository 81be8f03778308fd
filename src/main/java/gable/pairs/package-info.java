/**
 * Which pin belongs to which bore: pure matching of what was found on the parts of one or more
 * builds, by position, by pattern and by size. What cannot be told is a doubt, never a guess.
 */
@NullMarked
package gable.pairs;

import org.jspecify.annotations.NullMarked;
