/**
 * Holds a package against the rules of the standard: core, materials and properties, production,
 * slices, beam lattices, triangle sets, booleans, displacement, volumetric, secure content.
 *
 * <p>One walk through each model part ({@link gable.threemf.ModelText}) feeds the table of elements
 * and attributes ({@code schema.txt}) and one checker for each specification; what needs several
 * parts is asked at the end. Each rule names the section that it comes from and how much a breach
 * matters: it <i>fails</i> where something is missing, cannot be read, or may be meant in two ways,
 * and is a <i>warning</i> where the rule is broken but what is meant remains plain.
 */
@NullMarked
package gable.validate;

import org.jspecify.annotations.NullMarked;
