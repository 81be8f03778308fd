/**
 * Reshapers of other people: loads them from jars, each in a class loader of its own, and keeps
 * them on a leash. One that throws, never answers or answers nonsense costs its own features only;
 * what it proposes is cut and proved like everything else.
 */
@NullMarked
package gable.plugin;

import org.jspecify.annotations.NullMarked;
